import { expect, test } from 'vitest'
import { REACH_SECONDS, timeReach } from './timeReach.ts'

test('means up to the reach of the clock, and spreads that are numbers', () => {
  expect(timeReach({ kind: 'constant', value: REACH_SECONDS })).toBeNull()
  expect(timeReach({ kind: 'exponential', mean: 2 * REACH_SECONDS })?.message).toBe(
    'times of 8590000000 s on average are too long to compute with',
  )
  // the mean is scale · Γ(1 + 1/shape): Γ(101) = 9.33e157, Γ(201) is beyond the largest number
  expect(timeReach({ kind: 'weibull', shape: 0.01, scale: 30 })?.code).toBe('E_TIMES_REACH')
  expect(timeReach({ kind: 'weibull', shape: 0.001, scale: 30 })?.message).toBe('the mean of these times is too large to compute with')
  expect(timeReach({ kind: 'weibull', shape: 0.01, scale: 1e-150 })?.message).toContain('spread')
})
