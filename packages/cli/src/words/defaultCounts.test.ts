import { expect, test } from 'vitest'
import { defaultCounts } from './defaultCounts.ts'

test('from below the lower knee to one free zone', () => {
  expect(defaultCounts({ carriersLow: 8, storageZones: 18 })).toEqual([5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17])
})

test('always at least one', () => {
  expect(defaultCounts({ carriersLow: 2, storageZones: 2 })).toEqual([1])
  expect(defaultCounts({ carriersLow: 40, storageZones: 6 })).toEqual([5])
  expect(defaultCounts({ carriersLow: null, storageZones: 4 })).toEqual([1, 2, 3])
})
