import { type LineSpec, type RunEnd, simulate } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { staffed } from '../../../../tests/helpers/staffed.ts'
import { standstillOf } from './standstill.ts'

const told = (spec: LineSpec) => standstillOf(spec, simulate(spec, { seed: '1', replication: 0 }).end)
const NOBODY = { unmanned: [], understaffed: [] }
const PLAIN = { move: 4, clear: 3 }

describe('too many carriers', () => {
  test('all places of a loop are taken', () => {
    const transfers = { 1: { lift: 1, lower: 1, exitClear: true } }
    const spec = smallLoop({ zones: 3, start: [0, 2], transfers, move: 1, clear: 1 })
    expect(told(spec)).toEqual({ reason: 'too many carriers', circle: [0, 2], behind: [], merge: null, ...NOBODY })
  })

  test('also where two lanes of it meet again: the merge is not to blame', () => {
    // Z0 → Z1 or Z2 → Z3 → Z0, a carrier in each
    const spec = smallGraph({
      zones: 4,
      start: [0, 1, 2, 3],
      paths: [...chain(0, 1, 3, 0), ...chain(0, 2, 3)],
      diverts: { 0: 'free' },
      ...PLAIN,
    })
    expect(told(spec)).toEqual({ reason: 'too many carriers', circle: [0, 1, 3], behind: [2], merge: null, ...NOBODY })
  })
})

describe('too many carriers, though the circle has a merge', () => {
  test('all there are stand in it: what could come in there is nowhere', () => {
    // Z0 → Z1 → Z3 for the empty ones, Z0 → Z2 → Z3 for none of them: Z2 stays free
    const paths = [...chain(0, 1, 3, 0), { from: 0, to: 2, takes: { load: 'loaded' as const } }, ...chain(2, 3)]
    const spec = smallGraph({ zones: 4, start: [0, 1, 3], paths, ...PLAIN })
    expect(told(spec)).toEqual({ reason: 'too many carriers', circle: [0, 1, 3], behind: [], merge: null, ...NOBODY })
  })
})

describe('a merge fills its own exit', () => {
  test('a circle through a zone with two ways in; the other way waits behind', () => {
    const spec = smallGraph({ zones: 3, start: [0, 1, 2], paths: chain(0, 1, 2, 1), ...PLAIN })
    expect(told(spec)).toEqual({ reason: 'merge fills its own exit', circle: [1, 2], behind: [0], merge: 1, ...NOBODY })
  })

  test('one lane is full while the other is free, and a carrier waits before the circle', () => {
    // Z0 → Z1 → Z3 for the empty ones, Z0 → Z2 → Z3 for none of them: Z2 stays free; Z4 → Z3 is the way in of the fourth
    const paths = [...chain(0, 1, 3, 0), { from: 0, to: 2, takes: { load: 'loaded' as const } }, ...chain(2, 3), ...chain(4, 3)]
    const spec = smallGraph({ zones: 5, start: [0, 1, 3, 4], paths, ...PLAIN })
    expect(told(spec)).toEqual({ reason: 'merge fills its own exit', circle: [0, 1, 3], behind: [4], merge: 3, ...NOBODY })
  })

  test('of several merges of the circle that is named at which somebody waits', () => {
    // the ring 1, 2, 3 with ways in at 1 (from 4, which is empty) and at 3 (from 0)
    const spec = smallGraph({ zones: 5, start: [0, 1, 2, 3], paths: [...chain(1, 2, 3, 1), ...chain(4, 1), ...chain(0, 3)], ...PLAIN })
    expect(told(spec)).toMatchObject({ reason: 'merge fills its own exit', merge: 3, behind: [0] })
  })
})

describe('operators', () => {
  test('one who waits for himself: his station needs two, and he alone covers it', () => {
    const spec = staffed({ zones: 3, start: [0], stations: [{ at: 1, load: 5 }] }, { operators: [{ stations: [0] }], needed: { 0: 2 } })
    expect(told(spec)).toEqual({
      reason: 'operator waits for himself',
      circle: [],
      behind: [],
      merge: null,
      unmanned: [1],
      understaffed: [1],
    })
  })

  test('two who wait for each other: neither station is understaffed', () => {
    const line = staffed(
      {
        zones: 4,
        stations: [
          { at: 1, load: 5 },
          { at: 3, load: 5 },
        ],
      },
      { operators: [{ stations: [0, 1] }, { stations: [0, 1] }], needed: { 0: 2, 1: 2 } },
    )
    const end: RunEnd = { reason: 'gridlock', atSeconds: 15, waits: [[0, 1]], cycle: [], unmanned: [1, 3] }
    expect(standstillOf(line, end)).toMatchObject({
      reason: 'operators wait for each other',
      behind: [0],
      unmanned: [1, 3],
      understaffed: [],
    })
  })

  test('beside a circle the circle is the reason, and the zones without operators are told', () => {
    // Z1 → Z2 → Z1 is full; apart from it Z3 waits at a station that needs two of one
    const graph = smallGraph({
      zones: 5,
      start: [1, 2, 4],
      paths: [...chain(1, 2, 1), ...chain(4, 3, 0)],
      stations: [{ at: 3, load: 5 }],
      ...PLAIN,
    })
    const spec = {
      ...graph,
      stations: graph.stations.map((station) => ({ ...station, operatorsNeeded: 2 })),
      operators: [{ name: 'op0', stations: [0], start: 0 }],
    }
    expect(told(spec)).toEqual({ reason: 'too many carriers', circle: [1, 2], behind: [], merge: null, unmanned: [3], understaffed: [3] })
  })
})

test('no circle, but a zone that waits for one without a way on', () => {
  const spec = smallGraph({ zones: 3, start: [0, 2], paths: chain(0, 2), ...PLAIN })
  expect(told(spec)).toEqual({ reason: 'no way on', circle: [], behind: [0], merge: null, ...NOBODY })
})

test('a run that went on to its end has no reason', () => {
  const spec = smallLoop({ zones: 3, start: [0], ...PLAIN })
  expect(told(spec)).toBeNull()
})
