import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { predictionInterval } from './predictionInterval.ts'

test('no spread, no width', () => {
  expect(predictionInterval([0.1, 0.1])).toMatchObject({ halfWidth: 0, low: 0.1, high: 0.1, status: 'no spread' })
})

test('it encloses the next shift in 95 of 100', () => {
  // 10,000 samples of 8: ±0.01 is 4.6 standard errors, false alarm 4e-6
  const next = stream('coverage', 0, 'prediction')
  const shift = (): number => 50 + 4 * normalQuantile(next())
  let count = 0
  for (let s = 0; s < 10_000; s++) {
    const { low, high } = predictionInterval(Array.from({ length: 8 }, shift))
    const one = shift()
    if (low <= one && one <= high) count++
  }
  expect(Math.abs(count / 10_000 - 0.95)).toBeLessThan(0.01)
})

test('refused', () => {
  expect(() => predictionInterval([5])).toThrow('Cannot give a prediction from 1 replication')
  expect(() => predictionInterval([5, 6], 0.95, 0)).toThrow('The number of further shifts is 0: give a whole number from 1.')
})
