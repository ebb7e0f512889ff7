import { expect, test } from 'vitest'
import { wholeShares } from './wholeShares.ts'

test('the smallest whole numbers that give the shares', () => {
  expect(wholeShares([0.525, 0.3, 0.175])).toEqual([21, 12, 7])
  expect(wholeShares([0.1, 0.2])).toEqual([1, 2])
  expect(wholeShares([1 / 3, 2 / 3])).toEqual([1, 2])
  expect(wholeShares([2.5])).toEqual([1])
})

test('whole ones stay as they are', () => expect(wholeShares([4, 6])).toEqual([4, 6]))

test('refused', () => {
  expect(() => wholeShares([])).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
  expect(() => wholeShares([1, 0])).toThrow('The share 0 in row 2 is not above 0')
  expect(() => wholeShares([1, 2_000_000])).toThrow('above 1,000,000: round them')
  expect(() => wholeShares([Math.PI, Math.E])).toThrow('round them')
})
