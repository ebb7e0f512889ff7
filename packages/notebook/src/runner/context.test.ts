import { expect, test } from 'vitest'
import { countsOf } from './context.ts'

test('counts from the least to the most, both included, or a list as it is', () => {
  expect(countsOf({ from: 5, to: 8 })).toEqual([5, 6, 7, 8])
  expect(countsOf([4, 9])).toEqual([4, 9])
  expect(() => countsOf({ from: 8, to: 5 })).toThrow('carriers from 8 to 5')
  expect(() => countsOf({ from: 1.5, to: 5 })).toThrow(RangeError)
})
