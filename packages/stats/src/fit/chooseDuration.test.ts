import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { chooseDuration } from './chooseDuration.ts'
import { gammaFit } from './gammaFit.ts'
import { lognormalFit } from './lognormalFit.ts'

const next = stream('7', 0, 'choice')
const drawn = (n: number, quantile: (u: number) => number): number[] => Array.from({ length: n }, () => quantile(next()))

test('lognormal values, and gamma ones that cannot be told from them, are taken as lognormal', () => {
  for (const quantile of [(u: number) => lognormalFit.quantile([3, 0.2], u), (u: number) => gammaFit.quantile([25, 0.8], u)]) {
    const choice = chooseDuration(drawn(30, quantile), null, next, 99)
    expect(choice.status).toBe('ok')
    expect(choice.chosen?.fit.family).toBe('lognormal')
    expect(choice.distribution).toBe(choice.chosen?.fit.distribution)
    expect(choice.candidates.map((one) => one.fit.family)).toEqual(['lognormal', 'gamma', 'weibull'])
  }
})

test('a shift that is known is tried beside none', () => {
  const values = drawn(60, (u) => 17 + lognormalFit.quantile([1.5, 0.6], u))
  const choice = chooseDuration(values, 17, next, 99)
  expect(choice.candidates).toHaveLength(6)
  expect(choice.chosen?.fit.shift).toBe(17)
})

test('two variants mixed: none holds, the values are resampled', () => {
  const values = [...drawn(60, (u) => lognormalFit.quantile([2.5, 0.08], u)), ...drawn(60, (u) => lognormalFit.quantile([3.5, 0.08], u))]
  const choice = chooseDuration(values, null, next, 99)
  expect(choice).toMatchObject({ status: 'none holds', chosen: null, distribution: { kind: 'empirical', interpolate: false } })
})

test('refused', () => {
  expect(() =>
    chooseDuration(
      drawn(19, (u) => 5 + u),
      null,
      next,
    ),
  ).toThrow('19 values are too few for a fit: measure 20 or more')
})
