import { expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { graphLine } from '@loopwright/line'
import { countsAround, defaultCounts, mostCarriers } from './defaultCounts.ts'

test('around the lower knee, to one free zone', () => {
  expect(countsAround({ carriersLow: 8, storageZones: 18 })).toEqual([5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17])
  expect(countsAround({ carriersLow: 20, storageZones: 100 })).toEqual([17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29])
})

test('always at least one', () => {
  expect(countsAround({ carriersLow: 2, storageZones: 2 })).toEqual([1])
  expect(countsAround({ carriersLow: 40, storageZones: 6 })).toEqual([5])
  expect(countsAround({ carriersLow: null, storageZones: 4 })).toEqual([1, 2, 3])
})

test('of a line by its law, with its own number; where nothing is known around that', () => {
  const loop = smallLoop({ zones: 8, start: 2, move: 2, clear: 1, stations: [{ at: 2, load: 4, unload: 2 }] })
  expect(defaultCounts(loop).at(-1)).toBe(7)
  const long = smallLoop({ zones: 40, start: 30, move: 2, clear: 1, stations: [{ at: 2, load: 4, unload: 40 }] })
  expect(defaultCounts(long).slice(-3)).toEqual([11, 12, 30])
  const open = smallGraph({
    zones: 6,
    start: { count: 3, rule: 'store' },
    paths: chain('store', 0, 1, 2, 3, 4, 5, 'store'),
    move: 2,
    clear: 1,
  })
  expect(defaultCounts(open)).toEqual([1, 2, 3, 4, 5, 6])
})

/** By hand: a carrier alone is round in 5 · 5 s of moves and 60 s of work, 85 s; the press lets one through in 50 + 9.6 s: 85/59.6 = 1.4. */
test('of an open line around the number from which on something else limits; with a store as many as there are zones', () => {
  const { spec } = graphLine({
    zones: ['A', 'B', 'C', 'D'],
    zoneLength: 1,
    drive: { speed: 0.2 },
    carriers: { count: 20, length: 0.9, start: 'store' },
    paths: ['store > A > B > C > D > store'],
    stations: { load: { zone: 'A', load: 5 }, press: { zone: 'B', work: 50 }, unload: { zone: 'D', unload: 5 } },
    end: 3600,
  })
  expect(mostCarriers(spec)).toBe(4)
  expect(defaultCounts(spec)).toEqual([1, 2, 3, 4])
})
