import { expect, test } from 'vitest'
import { blockLoop } from '../../../../tests/bench/lines.ts'
import { chain, type PathWish, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import {
  AFTER_EXIT_CLEAR,
  CLEARS_ELSEWHERE,
  DIVERTS,
  EXIT_CLEAR,
  INTO_STORE,
  makeQuick,
  mayHold,
  MEETS,
  MERGES,
  NEVER_HELD,
  OUT_OF_STORE,
  PLAIN_CLEAR,
  QUICK,
  quickPaths,
  quickZones,
  STOPS,
  STOPS_BY_CARRIER,
  TURNS,
  WATCHED,
} from './quickZones.ts'

const PLAIN = PLAIN_CLEAR + NEVER_HELD
const TURN = { lift: 1, lower: 1, out: 'high' } as const

/** without the store */
const zonesOf = (line: Line): number[] => [...quickZones(line)].slice(0, -1)

test('a loop without transfers and stops is quick all round', () => {
  const line = buildLine(blockLoop(1, 8))
  expect([...quickZones(line)]).toEqual([...new Array(20).fill(QUICK), 0])
  expect([...quickPaths(line)]).toEqual(new Array(20).fill(PLAIN))
  expect(mayHold(line)).toBe(false)
})

test('round an exit-clear transfer in Z2: the way in always stops, both its paths ask ahead, the zone behind is asked for through it', () => {
  const line = buildLine(smallLoop({ zones: 6, start: 2, transfers: { 2: { ...TURN, exitClear: true } } }))
  expect(zonesOf(line)).toEqual([QUICK, QUICK + EXIT_CLEAR, QUICK + TURNS + EXIT_CLEAR, QUICK + AFTER_EXIT_CLEAR, QUICK, QUICK])
  expect([...quickPaths(line)]).toEqual([PLAIN, STOPS + PLAIN, NEVER_HELD, PLAIN, PLAIN, PLAIN])
})

test('in a graph: where ways part and meet is told; a move by hand is not quick, nor what may start along it; moves into the store and out of it are', () => {
  // store > 0 > 1 > 2 > 4 > store, 1 > 3 > 4; 4 > 0 by hand
  const spec = smallGraph({
    zones: 5,
    start: { count: 2, rule: 'store' },
    stations: [{ at: 2, load: 1 }],
    paths: [...chain('store', 0, 1, 2, 4, 'store'), ...chain(1, 3, 4), { from: 4, to: 0, move: 5, clear: 5 }],
  })
  const line = buildLine({
    ...spec,
    paths: spec.paths.map((path, p) => (p === 7 ? { ...path, manual: { kind: 'push', station: 0 } } : path)),
  })
  expect([...quickZones(line)]).toEqual([
    QUICK + MERGES,
    QUICK + DIVERTS + MEETS,
    MEETS,
    QUICK + MEETS,
    MERGES + DIVERTS + MEETS,
    QUICK + MEETS,
  ])
  expect([...quickPaths(line)]).toEqual([
    NEVER_HELD + OUT_OF_STORE,
    PLAIN,
    PLAIN,
    STOPS_BY_CARRIER + PLAIN,
    STOPS + PLAIN + INTO_STORE,
    PLAIN,
    STOPS_BY_CARRIER + PLAIN,
    STOPS,
  ])
})

test('the store is quick where one way leads out of it, by its drive, into a zone that a carrier may enter at once', () => {
  const open = (first: object, more: PathWish[] = []): number =>
    quickZones(
      buildLine(
        smallGraph({ zones: 3, start: { count: 2, rule: 'store' }, paths: [...chain('store', 0, 1, 2, 'store'), ...more], ...first }),
      ),
    )[3]!
  expect(open({})).toBe(QUICK + MEETS)
  expect(open({}, [{ from: 'store', to: 2 }])).toBe(0)
  expect(open({ transfers: { 0: { ...TURN, exitClear: true } } })).toBe(0)
  expect(open({ move: { kind: 'exponential', mean: 3 } })).toBe(0)
})

test('a zone behind an exit-clear transfer of a graph clears elsewhere; moves that a station watches are told', () => {
  const exit = { lift: 1, lower: 1, exitClear: true } as const
  const line = buildLine(smallGraph({ zones: 4, start: [0], transfers: { 1: exit }, paths: [...chain(0, 1, 2, 3, 0), { from: 0, to: 3 }] }))
  expect(zonesOf(line)).toEqual([
    DIVERTS + MEETS + EXIT_CLEAR,
    EXIT_CLEAR,
    QUICK + MEETS + AFTER_EXIT_CLEAR + CLEARS_ELSEWHERE,
    QUICK + MERGES,
  ])
  const loop = smallLoop({ zones: 4, start: 1, stations: [{ at: 2, load: 1 }] })
  const safe = loop.stations.map((station) => ({
    ...station,
    safetyStop: { probability: 0.1, resetSeconds: { kind: 'constant', value: 1 } as const },
  }))
  expect([...quickPaths(buildLine({ ...loop, stations: safe }))]).toEqual([
    PLAIN_CLEAR,
    WATCHED + PLAIN_CLEAR,
    WATCHED + PLAIN_CLEAR,
    PLAIN_CLEAR,
  ])
})

test('constants that are given are known too: such moves always stop', () => {
  const line = buildLine(
    smallLoop({ zones: 4, start: 2, move: [3, 3, { kind: 'uniform', min: 1, max: 2 }, null], clear: [2, 'move', 2, null] }),
  )
  expect(zonesOf(line)).toEqual([QUICK, QUICK, 0, QUICK])
  expect([...quickPaths(line)]).toEqual([STOPS + PLAIN, STOPS + PLAIN, STOPS + PLAIN, PLAIN])
  const { pathPace, paceSeconds } = makeQuick(line)!.paces
  expect([0, 1].map((path) => [...paceSeconds.subarray(pathPace[path]!, pathPace[path]! + 6)])).toEqual([
    [3, 3, 3, 3, 2, 2],
    [3, 3, 3, 3, 3, 3],
  ])
})

test('drawn times, a station on a transfer that turns, and moves of 0 s are left to the other instants', () => {
  const isQuick = (wish: object): boolean[] =>
    zonesOf(buildLine(smallLoop({ zones: 4, start: 2, ...wish }))).map((flags) => (flags & QUICK) > 0)
  expect(isQuick({ move: [{ kind: 'exponential', mean: 3 }, null, null, null], clear: ['move', null, null, null] })).toEqual([
    false,
    true,
    true,
    true,
  ])
  expect(isQuick({ transfers: { 1: TURN }, stations: [{ at: 1, work: 5 }] })).toEqual([true, false, true, true])
  expect(isQuick({ move: 0, clear: 0, odd: true })).toEqual([false, false, false, false])
  expect(isQuick({ transfers: { 3: { ...TURN, lift: 0 } } })).toEqual([true, true, true, false])
})

test('stops that can hold a zone are known', () => {
  const stop = { name: 'jam', after: 50, repair: 5 } as const
  const built = (kind: 'zone' | 'station', clock: 'calendar' | 'operating') =>
    buildLine(smallLoop({ zones: 4, start: 2, stations: [{ at: 0, work: 1 }], stops: [{ ...stop, on: { kind, index: 0 }, clock }] }))
  expect([built('zone', 'calendar'), built('station', 'operating')].map(mayHold)).toEqual([true, false])
  expect(mayHold(buildLine(smallLoop({ zones: 4, start: 2, breaks: [[10, 5]], conveyorStops: true })))).toBe(true)
})

test('a line all of whose times are drawn has no quick instants', () => {
  const drawn = { kind: 'exponential', mean: 3 } as const
  expect(makeQuick(buildLine(smallLoop({ zones: 4, start: 2, move: drawn, clear: 'move' })))).toBe(null)
})

test('on a plain loop every start is foreseen but that out of the zone where laps begin', () => {
  const { onward, behind } = makeQuick(buildLine(smallLoop({ zones: 4, start: 1 })))!
  expect([...onward]).toEqual([1, 2, 3, NONE])
  expect([...behind]).toEqual([3, NONE, 1, 2, NONE])
})

test('no start is foreseen where a stop may hold a zone, or by the clock the station in one, or a break the conveyor', () => {
  const built = (wish: object): number[][] => {
    const { onward, behind } = makeQuick(buildLine(smallLoop({ zones: 5, start: 1, stations: [{ at: 3, work: 1 }], ...wish })))!
    return [[...onward], [...behind].slice(0, -1)]
  }
  const stop = { name: 'jam', after: 50, repair: 5, clock: 'calendar' } as const
  expect(built({ stops: [{ ...stop, on: { kind: 'zone', index: 3 } }] })).toEqual([
    [1, NONE, NONE, NONE, NONE],
    [4, NONE, 1, NONE, NONE],
  ])
  const withoutStation = [
    [1, NONE, NONE, 4, NONE],
    [4, NONE, 1, NONE, NONE],
  ]
  expect(built({ stops: [{ ...stop, on: { kind: 'station', index: 0 } }] })).toEqual(withoutStation)
  const all = [
    [1, 2, 3, 4, NONE],
    [4, NONE, 1, 2, 3],
  ]
  expect(built({ stops: [{ ...stop, clock: 'operating', on: { kind: 'station', index: 0 } }] })).toEqual(all)
  expect(built({ breaks: [[10, 5]] })).toEqual(all)
  expect(built({ breaks: [[10, 5]], conveyorStops: true })).toEqual([new Array(5).fill(NONE), new Array(5).fill(NONE)])
})
