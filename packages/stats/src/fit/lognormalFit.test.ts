import { expect, test } from 'vitest'
import { distributionMean, distributionVariance } from '../distributions/distributions.ts'
import { quantile } from '../distributions/samplerTable.ts'
import { stream } from '../random/stream.ts'
import { lognormalFit } from './lognormalFit.ts'

const truth = [3.1, 0.25] as const

test('it finds again what values were drawn from', () => {
  // 20,000 values; the bounds are five standard errors, by the information of the likelihood
  const next = stream('7', 0, 'lognormal')
  const found = lognormalFit.fit(
    Array.from({ length: 20_000 }, () => lognormalFit.quantile(truth, next())),
    null,
  )
  expect(Math.abs(found[0] / truth[0] - 1)).toBeLessThan(0.003)
  expect(Math.abs(found[1] / truth[1] - 1)).toBeLessThan(0.025)
})

test('no other parameters near by are more likely', () => {
  const values = [3.1, 4.7, 2.2, 9.9, 5.5, 4.1]
  const best = lognormalFit.fit(values, null)
  const likelihood = (parameters: readonly [number, number]): number =>
    values.reduce((sum, x) => sum + lognormalFit.lnDensity(parameters, x), 0)
  for (const [a, b] of [
    [1.001, 1],
    [0.999, 1],
    [1, 1.001],
    [1, 0.999],
  ] as const) {
    expect(likelihood([best[0] * a, best[1] * b])).toBeLessThan(likelihood(best))
  }
})

test('density, tails, quantile and distribution are of one curve', () => {
  const d = lognormalFit.distribution(truth)
  for (const u of [0.01, 0.3, 0.8, 0.999]) {
    const x = lognormalFit.quantile(truth, u)
    const tails = lognormalFit.lnTails(truth, x)
    expect(Math.exp(tails.lower)).toBeCloseTo(u, 11)
    expect(Math.exp(tails.upper)).toBeCloseTo(1 - u, 11)
    expect(quantile(d, u) / x).toBeCloseTo(1, 11)
    const step = 1e-5 * x
    const slope =
      (Math.exp(lognormalFit.lnTails(truth, x + step).lower) - Math.exp(lognormalFit.lnTails(truth, x - step).lower)) / (2 * step)
    expect(slope / Math.exp(lognormalFit.lnDensity(truth, x))).toBeCloseTo(1, 6)
  }
  expect(distributionMean(d)).toBeGreaterThan(0)
  expect(distributionVariance(d)).toBeGreaterThan(0)
})
