/** Standing still for ever: MODEL.md §10, worked out by hand. */
import { describe, expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop, tell } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { standsStill, standstill } from './gridlock.ts'
import { resetLine } from '../build/start.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

const EXIT = { lift: 2, lower: 1.5, exitClear: true }

test('as many carriers as places to stand: gridlock at time 0', () => {
  // Z1 and Z3 are exit-clear transfers: K = 2, carriers in Z0 and Z2, each waits for the place of the other behind the transfer
  const { result, lines } = tell(smallLoop({ zones: 4, start: 2, move: 4, clear: 3, transfers: { 1: EXIT, 3: EXIT }, until: 50 }))
  expect(lines).toEqual(['0 standstill'])
  expect(result.end).toEqual({
    reason: 'gridlock',
    atSeconds: 0,
    waits: [
      [0, 2],
      [2, 0],
    ],
    cycle: [0, 2],
    unmanned: [],
  })
  // blocked for the whole window; the transfers are free
  expect(result.zones.map((zone) => zone.seconds.blocked)).toEqual([50, 0, 50, 0])
  expect(result.zones.map((zone) => zone.seconds.free)).toEqual([0, 50, 0, 50])
  expect(result.zones.map((zone) => zone.occupancyMean)).toEqual([1, 0, 1, 0])
  expect(result.output).toBe(0)
})

test('a gridlock that comes later is told at the instant it is complete', () => {
  // Z1 is an exit-clear transfer, and c1 starts in it. It moves to Z2, arriving at 4; Z1 is clear at 3. Then Z0, Z2, Z3 are full, and Z1 may not be entered.
  const spec = smallLoop({ zones: 4, start: [0, 1, 3], move: 4, clear: 3, transfers: { 1: { ...EXIT, out: 'low' } }, until: 100 })
  const { result } = tell(spec)
  expect(result.end).toEqual({
    reason: 'gridlock',
    atSeconds: 4,
    waits: [
      [0, 2],
      [2, 3],
      [3, 0],
    ],
    cycle: [0, 2, 3],
    unmanned: [],
  })
  expect(spent(result.zones[1]!.seconds)).toEqual({ free: 97, vacating: 3 })
  expect(spent(result.zones[2]!.seconds)).toEqual({ claimed: 4, blocked: 96 })
})

test('behind two exit-clear transfers the zone after both is waited for', () => {
  // Z1, Z2 exit-clear; carriers in Z0, Z3: K = 2 of 4 zones
  const { result } = tell(smallLoop({ zones: 4, start: [0, 3], move: 4, clear: 3, transfers: { 1: EXIT, 2: EXIT } }))
  expect(result.end.waits).toEqual([
    [0, 3],
    [3, 0],
  ])
})

test('one hole is enough for the line to go on', () => {
  // Z − 1 = 3 carriers in 4 zones, one hole that needs 4 · 3 s for a lap: (4 − 3)/12 moves a second out of each zone (MODEL.md §12)
  const { result } = tell(smallLoop({ zones: 4, start: 3, move: 1, clear: 3, warmup: 120, until: 360 }))
  expect(result.end.reason).toBe('end of window')
  expect(result.zones.map((zone) => zone.movesOut)).toEqual([20, 20, 20, 20])
})

test('a line that is held is no gridlock', () => {
  // alone, and the zone ahead stopped from 2 on for longer than the window; then the station ahead
  const held = smallLoop({
    zones: 4,
    start: [0],
    move: 4,
    clear: 3,
    stations: [{ at: 1, load: 5 }],
    stops: [{ name: 'jam', on: { kind: 'zone', index: 2 }, clock: 'calendar', after: 2, repair: 1000 }],
  })
  expect(tell(held).result.end).toEqual({ reason: 'end of window', atSeconds: null, waits: [], cycle: [], unmanned: [] })
  const stopped = smallLoop({
    zones: 4,
    start: [0],
    move: 4,
    clear: 3,
    stations: [{ at: 1, load: 5 }],
    stops: [{ name: 'wear', on: { kind: 'station', index: 0 }, clock: 'calendar', after: 2, repair: 1000 }],
  })
  expect(tell(stopped).result.end.reason).toBe('end of window')
  // a transfer held before its change, in a full loop but for it
  const lifting = smallLoop({
    zones: 3,
    start: [0],
    move: 4,
    clear: 3,
    transfers: { 1: { lift: 2, lower: 2 } },
    stops: [{ name: 'jam', on: { kind: 'zone', index: 1 }, clock: 'calendar', after: 4, repair: 1000 }],
  })
  expect(tell(lifting).result.end.reason).toBe('end of window')
  // … and before its change back, with which alone it would go on: c1 has left Z1, stopped at its clear at 3, and stands in Z2 from 2 on, behind c0 in Z0
  const lowering = smallLoop({
    zones: 3,
    start: [0, 1],
    move: 2,
    clear: 3,
    transfers: { 1: { lift: 2, lower: 2 } },
    stops: [{ name: 'jam', on: { kind: 'zone', index: 1 }, clock: 'calendar', after: 3, repair: 1000 }],
  })
  expect(tell(lowering).result.end.reason).toBe('end of window')
})

test('the pairs are those that wait, the cycle the first one met from the lowest zone', () => {
  // 5 zones, carriers in Z1 and Z2: c0 waits for Z2, c1 could start: not standing still, no cycle
  const line = buildLine(smallLoop({ zones: 5, start: [1, 2], move: 1, clear: 1 }))
  resetLine(line, 'seed', 0)
  expect(standsStill(line)).toBe(false)
  expect(standstill(line)).toMatchObject({
    waits: [
      [1, 2],
      [2, 3],
    ],
    cycle: [],
    unmanned: [],
  })
})

describe('on a graph', () => {
  const GIVEN = { move: 4, clear: 3 }
  test('waits lead through the graph; the cycle is the first one met', () => {
    // Z1 → Z2 → Z1 is full; Z0 waits for Z1
    const spec = smallGraph({ zones: 3, start: [0, 1, 2], paths: chain(0, 1, 2, 1), ...GIVEN })
    expect(tell(spec).result.end).toEqual({
      reason: 'gridlock',
      atSeconds: 0,
      waits: [
        [0, 1],
        [1, 2],
        [2, 1],
      ],
      cycle: [1, 2],
      unmanned: [],
    })
  })

  test('of several ways out the one that is its own: by the divert, and behind an exit-clear transfer the zone after it', () => {
    // Z0 → Z1 or, empty, Z2 (exit-clear) → Z3; Z3 holds a carrier without a way out, which waits for nothing
    const paths = [...chain(0, 1), { from: 0, to: 2, takes: { load: 'empty' as const } }, ...chain(2, 3)]
    const transfers = { 2: { lift: 1, lower: 1, exitClear: true } }
    const spec = smallGraph({ zones: 4, start: [0, 3], paths, transfers, ...GIVEN })
    expect(tell(spec).result.end).toMatchObject({ atSeconds: 0, waits: [[0, 3]], cycle: [], unmanned: [] })
  })

  test('the store is never waited for: a carrier that cannot leave it is in no pair', () => {
    // Z0 has no way out: c0 stands there from 4, clear of the store at once; c1 stays in the store
    const spec = smallGraph({ zones: 1, start: ['store', 'store'], paths: chain('store', 0), ...GIVEN })
    expect(tell(spec).result.end).toEqual({ reason: 'gridlock', atSeconds: 4, waits: [], cycle: [], unmanned: [] })
  })
})
