import { expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { countsAround, defaultCounts } from './defaultCounts.ts'

test('around the lower knee, to one free zone', () => {
  expect(countsAround({ carriersLow: 8, storageZones: 18 })).toEqual([5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17])
  expect(countsAround({ carriersLow: 20, storageZones: 100 })).toEqual([17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29])
})

test('always at least one', () => {
  expect(countsAround({ carriersLow: 2, storageZones: 2 })).toEqual([1])
  expect(countsAround({ carriersLow: 40, storageZones: 6 })).toEqual([5])
  expect(countsAround({ carriersLow: null, storageZones: 4 })).toEqual([1, 2, 3])
})

test('of a line by its law; without one around its own number', () => {
  const loop = smallLoop({ zones: 8, start: 2, move: 2, clear: 1, stations: [{ at: 2, load: 4, unload: 2 }] })
  expect(defaultCounts(loop).at(-1)).toBe(7)
  const open = smallGraph({
    zones: 6,
    start: { count: 3, rule: 'store' },
    paths: chain('store', 0, 1, 2, 3, 4, 5, 'store'),
    move: 2,
    clear: 1,
  })
  expect(defaultCounts(open)).toEqual([1, 2, 3, 4, 5])
})
