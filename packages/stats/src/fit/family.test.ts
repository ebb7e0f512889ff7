import { expect, test } from 'vitest'
import { weightedMean } from './family.ts'

test('equal weights are none', () => {
  const square = (x: number): number => x * x
  expect(weightedMean([1, 2, 3], null, square)).toBe(14 / 3)
  expect(weightedMean([1, 2, 3], [0.5, 0.25, 0.25], square)).toBe(3.75)
})
