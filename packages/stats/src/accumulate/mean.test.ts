import { expect, test } from 'vitest'
import { StatisticsError } from '../statisticsError.ts'
import { meanOf } from './mean.ts'

test('the sum in the order of the list, by the count', () => {
  expect(meanOf([1, 2, 6])).toBe(3)
  // in another order these round otherwise
  expect([meanOf([1e16, 1, 1]), meanOf([1, 1, 1e16])]).toEqual([1e16 / 3, (1e16 + 2) / 3])
  expect(1e16 / 3).not.toBe((1e16 + 2) / 3)
})

test('of nothing, and of what is no number, there is none', () => {
  expect(() => meanOf([])).toThrow(new StatisticsError('E_TOO_FEW', 'Cannot give a mean from 0 values: give at least 1.'))
  expect(() => meanOf([1, Number.NaN])).toThrow('row 2')
})
