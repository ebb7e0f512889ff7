import { expect, test } from 'vitest'
import { defaultCounts } from './defaultCounts.ts'

test('around the lower knee, to one free zone', () => {
  expect(defaultCounts({ carriersLow: 8, storageZones: 18 })).toEqual([5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17])
  expect(defaultCounts({ carriersLow: 20, storageZones: 100 })).toEqual([17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29])
})

test('always at least one', () => {
  expect(defaultCounts({ carriersLow: 2, storageZones: 2 })).toEqual([1])
  expect(defaultCounts({ carriersLow: 40, storageZones: 6 })).toEqual([5])
  expect(defaultCounts({ carriersLow: null, storageZones: 4 })).toEqual([1, 2, 3])
})
