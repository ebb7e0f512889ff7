/** Where the carriers stand at time 0: MODEL.md §10. */
import { describe, expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { STORE } from '../spec.ts'
import { startPlaces, startZones } from './startPlaces.ts'

const EXIT = { lift: 1, lower: 1, exitClear: true }

describe('places', () => {
  test('spread: carrier c in the ⌊c·K/N⌋-th place', () => {
    // K = 10: ⌊0, 3.3, 6.7⌋; ⌊0, 1.4, 2.9, 4.3, 5.7, 7.1, 8.6⌋
    expect(startZones(smallLoop({ zones: 10, start: 3 }))).toEqual([0, 3, 6])
    expect(startZones(smallLoop({ zones: 10, start: 7 }))).toEqual([0, 1, 2, 4, 5, 7, 8])
    expect(startZones(smallLoop({ zones: 10, start: 1 }))).toEqual([0])
  })
  test('exit-clear transfers are no place, other transfers are', () => {
    // places Z0, Z2, Z3, Z5: K = 4
    const transfers = { 1: EXIT, 4: EXIT, 5: { lift: 1, lower: 1 } }
    expect(startZones(smallLoop({ zones: 6, start: 3, transfers }))).toEqual([0, 2, 3])
    expect(startZones(smallLoop({ zones: 6, start: 4, transfers }))).toEqual([0, 2, 3, 5])
    expect(startZones(smallLoop({ zones: 6, start: 3, packed: true, transfers }))).toEqual([0, 2, 3])
  })
  test('as listed, in the order of the carriers', () => {
    expect(startZones(smallLoop({ zones: 6, start: [4, 0, 2] }))).toEqual([4, 0, 2])
  })
  test('too many, a list of the wrong length, two in one zone', () => {
    const transfers = { 1: EXIT, 4: EXIT }
    expect(() => startZones(smallLoop({ zones: 6, start: 5, transfers, odd: true }))).toThrow('5 carriers cannot start in 4 places')
    expect(() => startZones(smallLoop({ zones: 6, start: 5, packed: true, transfers, odd: true }))).toThrow(RangeError)
    const spec = smallLoop({ zones: 6, start: [0, 1] })
    expect(() => startZones({ ...spec, carriers: { ...spec.carriers, count: 3 } })).toThrow('3 carriers cannot start in 2 places')
    expect(() => startZones(smallLoop({ zones: 6, start: [3, 3], odd: true }))).toThrow('two carriers start in one zone')
  })
})

test('spread and packed leave exit-clear transfers out, on any graph', () => {
  const wish = (rule: 'spread' | 'packed') =>
    smallGraph({
      zones: 5,
      start: { count: 3, rule },
      paths: chain(0, 1, 2, 3, 0),
      transfers: { 2: { lift: 1, lower: 1, exitClear: true } },
    })
  expect(startZones(wish('spread'))).toEqual([0, 1, 3])
  expect(startZones(wish('packed'))).toEqual([0, 1, 3])
  expect(startZones({ ...wish('spread'), carriers: { ...wish('spread').carriers, count: 2 } })).toEqual([0, 3])
})

test('as places in the columns the store comes after the last zone', () => {
  const open = smallGraph({ zones: 3, start: ['store', 1], paths: chain('store', 0, 1, 2, 'store'), move: 1, clear: 1 })
  expect(startZones(open)).toEqual([STORE, 1])
  expect([...startPlaces(open)]).toEqual([3, 1])
})
