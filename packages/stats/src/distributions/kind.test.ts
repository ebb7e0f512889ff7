import { expect, test } from 'vitest'
import { momentOfValuesBelow, power, weightBelow } from './kind.ts'

test('weights of the values up to x, with x or without', () => {
  expect(weightBelow([1, 2, 3, 4], null, 2, true)).toBe(0.5)
  expect(weightBelow([1, 2, 3, 4], null, 2, false)).toBe(0.25)
  expect(weightBelow([1, 2], [1, 3], 1, true)).toBe(0.25)
})

test('moments of the values up to x', () => {
  expect(momentOfValuesBelow([1, 2, 4], [1, 1, 2], 1, 2, true)).toBe(0.75)
  expect(momentOfValuesBelow([1, 2, 4], [1, 1, 2], 2, Infinity, true)).toBe(37 / 4)
  expect([power(3, 1), power(3, 2)]).toEqual([3, 9])
})
