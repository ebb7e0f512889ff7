import { expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { buildLine } from '../build/build.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { FREE, VACATING } from '../state/moves.ts'
import { S_EXCHANGING, S_STARVED, Z_FREE } from '../telling/states.ts'
import { turnFree } from './quickFree.ts'
import { makeQuick, NOT_QUICK, type Quick } from './quickZones.ts'

/** Z0 → Z1 → Z2 → Z0; at time 0 carrier k stands, done, in the k-th zone of `start`, and Z1 is being left. */
function leaving(start: readonly number[]): { line: Line; quick: Quick } {
  const stations = [{ at: 1, work: { kind: 'constant', value: 5 } }] as const
  const line = buildLine(smallGraph({ zones: 3, start, paths: chain(0, 1, 2, 0), stations }))
  resetLine(line, 'a', 0)
  line.moves.zoneState[1] = VACATING
  line.collector.stationState[0] = S_EXCHANGING
  line.activity = 1
  return { line, quick: makeQuick(line)! }
}

const after = ({ moves, activity, events, collector }: Line): readonly number[] => [
  moves.zoneState[1]!,
  activity,
  events,
  collector.zoneState[1]!,
  collector.stationState[0]!,
]

test('who waits behind the zone starts along its path; what is told of the zone is left to the start', () => {
  const { line, quick } = leaving([0])
  const told = line.collector.zoneState[1]!
  expect(turnFree(line, quick, 1, false, true)).toBe(0)
  expect(after(line)).toEqual([FREE, 0, 1, told, S_EXCHANGING])
})

test('where nobody waits, the zone is free and its station starved', () => {
  const { line, quick } = leaving([2])
  expect(turnFree(line, quick, 1, false, true)).toBe(NONE)
  expect(after(line)).toEqual([FREE, 0, 1, Z_FREE, S_STARVED])
})

test('of a zone that a stop holds nothing is done, nor where it holds the one that waits', () => {
  for (const held of [1, 0]) {
    const { line, quick } = leaving([0])
    line.stops.zoneHeld[held] = 1
    const before = after(line)
    expect([held, turnFree(line, { ...quick, mayHold: true }, 1, false, true)]).toEqual([held, NOT_QUICK])
    expect(after(line)).toEqual(before)
  }
})
