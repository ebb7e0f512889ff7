import { expect, test } from 'vitest'
import { fQuantile } from './fQuantile.ts'
import { tQuantile } from './tQuantile.ts'

test('with one degree above it is the square of t', () => {
  for (const df of [1, 2, 9, 200]) expect(Math.abs(fQuantile(0.9, 1, df) / tQuantile(0.95, df) ** 2 - 1)).toBeLessThan(1e-9)
})

test('turned round it is the inverse', () => {
  expect(fQuantile(0.1, 4, 9) * fQuantile(0.9, 9, 4)).toBeCloseTo(1, 10)
})

test('arguments out of range are refused', () => {
  expect(() => fQuantile(0.5, 1, -1)).toThrow('denominator is -1')
  expect(() => fQuantile(0.5, 0, 1)).toThrow('numerator is 0')
  expect(() => fQuantile(1, 1, 1)).toThrow('the probability is 1')
})
