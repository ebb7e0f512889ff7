import { expect, test } from 'vitest'
import { erfc, normalCdf } from './normal.ts'

test('the two tails are mirror images, to every digit', () => {
  for (const z of [0, 0.3, 1, 2.5, 6, 20, 37]) expect(normalCdf(-z)).toBe(0.5 * erfc(z / Math.SQRT2))
  expect(normalCdf(-1) + normalCdf(1)).toBeCloseTo(1, 15)
})

test('far out it is small, not zero, and never above 1', () => {
  expect([erfc(0), erfc(-40), erfc(40)]).toEqual([1, 2, 0])
  expect(normalCdf(-38)).toBeGreaterThan(0)
  expect(normalCdf(40)).toBe(1)
})
