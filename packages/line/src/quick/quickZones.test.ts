import { expect, test } from 'vitest'
import { blockLoop } from '../../../../tests/bench/lines.ts'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import {
  AFTER_EXIT_CLEAR,
  EXIT_CLEAR,
  hasQuickInstants,
  makeQuick,
  mayHold,
  PLAIN_CLEAR,
  QUICK,
  quickZones,
  STOPS,
  TURNS,
} from './quickZones.ts'

const TURN = { lift: 1, lower: 1, out: 'high' } as const

test('a loop without transfers and stops is quick all round', () => {
  const line = buildLine(blockLoop(1, 8))
  expect(hasQuickInstants(line)).toBe(true)
  expect([...quickZones(line)]).toEqual(new Array(20).fill(QUICK + PLAIN_CLEAR))
  expect(mayHold(line)).toBe(false)
})

test('round an exit-clear transfer in Z2: the way in always stops, both its paths ask ahead, the zone behind is asked for through it', () => {
  const line = buildLine(smallLoop({ zones: 6, start: 2, transfers: { 2: { ...TURN, exitClear: true } } }))
  expect([...quickZones(line)]).toEqual([
    QUICK + PLAIN_CLEAR,
    QUICK + STOPS + PLAIN_CLEAR + EXIT_CLEAR,
    QUICK + TURNS + EXIT_CLEAR,
    QUICK + PLAIN_CLEAR + AFTER_EXIT_CLEAR,
    QUICK + PLAIN_CLEAR,
    QUICK + PLAIN_CLEAR,
  ])
})

test('constants that are given are known too: such moves always stop', () => {
  const line = buildLine(
    smallLoop({ zones: 4, start: 2, move: [3, 3, { kind: 'uniform', min: 1, max: 2 }, null], clear: [2, 'move', 2, null] }),
  )
  expect([...quickZones(line)]).toEqual([
    QUICK + STOPS + PLAIN_CLEAR,
    QUICK + STOPS + PLAIN_CLEAR,
    STOPS + PLAIN_CLEAR,
    QUICK + PLAIN_CLEAR,
  ])
  const { pathPace, paceSeconds } = makeQuick(line)!.paces
  expect([0, 1].map((path) => [...paceSeconds.subarray(pathPace[path]!, pathPace[path]! + 6)])).toEqual([
    [3, 3, 3, 3, 2, 2],
    [3, 3, 3, 3, 3, 3],
  ])
})

test('drawn times, a station on a transfer that turns, and moves of 0 s are left to the other instants', () => {
  const isQuick = (wish: object): boolean[] =>
    [...quickZones(buildLine(smallLoop({ zones: 4, start: 2, ...wish })))].map((flags) => (flags & QUICK) > 0)
  expect(isQuick({ move: [{ kind: 'exponential', mean: 3 }, null, null, null], clear: ['move', null, null, null] })).toEqual([
    false,
    true,
    true,
    true,
  ])
  expect(isQuick({ transfers: { 1: TURN }, stations: [{ at: 1, work: 5 }] })).toEqual([true, false, true, true])
  expect(isQuick({ move: 0, clear: 0 })).toEqual([false, false, false, false])
  expect(isQuick({ transfers: { 3: { ...TURN, lift: 0 } } })).toEqual([true, true, true, false])
})

test('stops that can hold a zone are known; a line whose zones have operating clocks has no quick instants', () => {
  const stop = { name: 'jam', after: 50, repair: 5 } as const
  const built = (kind: 'zone' | 'station', clock: 'calendar' | 'operating') =>
    buildLine(smallLoop({ zones: 4, start: 2, stations: [{ at: 0, work: 1 }], stops: [{ ...stop, on: { kind, index: 0 }, clock }] }))
  expect([built('zone', 'calendar'), built('station', 'operating')].map(mayHold)).toEqual([true, false])
  expect([built('zone', 'calendar'), built('zone', 'operating'), built('station', 'operating')].map(hasQuickInstants)).toEqual([
    true,
    false,
    true,
  ])
  expect(mayHold(buildLine(smallLoop({ zones: 4, start: 2, breaks: [[10, 5]], conveyorStops: true })))).toBe(true)
})
