import type { Distribution } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { REACH_SECONDS, timeReach } from './timeReach.ts'

const told = (times: Distribution) => timeReach(times)?.message

test('means up to the reach of the clock, and spreads that are numbers', () => {
  expect(told({ kind: 'constant', value: REACH_SECONDS })).toBeUndefined()
  // the mean is scale · Γ(1 + 1/shape): Γ(101) = 9.33e157, Γ(201) is beyond the largest number
  expect(told({ kind: 'weibull', shape: 0.01, scale: 30 })).toBe('times of 2.8e+159 s on average are too long to compute with')
  expect(told({ kind: 'weibull', shape: 0.001, scale: 30 })).toBe('the mean of these times is too long to compute with')
  expect(told({ kind: 'weibull', shape: 0.01, scale: 1e-150 })).toContain('spread')
})

test('no time that they are given by, nor one inside, which could not be read back', () => {
  const long = { kind: 'exponential', mean: 2 * REACH_SECONDS } as const
  const sentence = 'a time of 8590000000 s is too long to compute with'
  expect(told(long)).toBe(sentence)
  expect(told({ kind: 'limited', of: long, shift: 0, min: null, max: 60 })).toBe(sentence)
  expect(told({ kind: 'discrete', values: [1, 2 * REACH_SECONDS], weights: [1e9, 1] })).toBe(sentence)
})
