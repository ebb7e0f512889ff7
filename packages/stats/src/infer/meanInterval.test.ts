import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { meanInterval } from './meanInterval.ts'

test('its status', () => {
  expect(meanInterval([1, 2]).status).toBe('few replications')
  expect(meanInterval([...Array(10).keys()]).status).toBe('ok')
  expect(meanInterval([0.1, 0.1, 0.1])).toEqual({
    n: 3,
    mean: 0.1,
    sd: 0,
    level: 0.95,
    halfWidth: 0,
    low: 0.1,
    high: 0.1,
    status: 'no spread',
  })
})

test('it encloses the mean in 95 of 100, a level of 0.90 does not', () => {
  // 10,000 samples of 10 normal values: the share has standard error 0.0022; 0.01 is 4.6 of them, false alarm 4e-6
  const next = stream('coverage', 0, 'mean')
  const covered = (level: number): number => {
    let count = 0
    for (let s = 0; s < 10_000; s++) {
      const { low, high } = meanInterval(
        Array.from({ length: 10 }, () => 50 + 4 * normalQuantile(next())),
        level,
      )
      if (low <= 50 && 50 <= high) count++
    }
    return count / 10_000
  }
  expect(Math.abs(covered(0.95) - 0.95)).toBeLessThan(0.01)
  expect(Math.abs(covered(0.9) - 0.95)).toBeGreaterThan(0.01)
})

test('refused', () => {
  expect(() => meanInterval([5])).toThrow('Cannot give an interval from 1 replication: give at least 2.')
  expect(() => meanInterval([5, Number.NaN])).toThrow(expect.objectContaining({ code: 'E_NOT_A_NUMBER' }))
  expect(() => meanInterval([5, 6], 1)).toThrow('The level is 1')
})
