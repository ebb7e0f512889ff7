import { expect, test } from 'vitest'
import { lag1 } from './lag1.ts'

test('a slow drift has neighbours alike, a zigzag unlike', () => {
  expect(lag1([1, 2, 3, 4, 5, 6, 7, 8])).toBeGreaterThan(0.5)
  expect(lag1([1, 2, 1, 2, 1, 2, 1, 2])).toBeLessThan(-0.5)
})

test('one value, or all equal, is refused', () => {
  expect(() => lag1([4])).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
  expect(() => lag1([4, 4, 4])).toThrow('All 3 values are 4: neighbours have no correlation.')
})
