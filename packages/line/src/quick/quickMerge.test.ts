import { expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { buildLine } from '../build/build.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { MOVING } from '../state/moves.ts'
import { isWaitedForAtMerge, SEVERAL, waitsToMerge } from './quickMerge.ts'
import { makeQuick, type Quick } from './quickZones.ts'

/** Z0 and Z1 both lead to Z2; at time 0 carrier k stands, done, in the k-th zone of `start`. */
function merging(start: readonly number[]): { line: Line; quick: Quick } {
  const line = buildLine(smallGraph({ zones: 4, start, paths: [...chain(0, 2, 3, 0), ...chain(1, 2), ...chain(3, 1)] }))
  resetLine(line, 'a', 0)
  return { line, quick: makeQuick(line)! }
}

test('nobody waits before the merge, or one, or several, of whom the lower path goes first where both have waited as long', () => {
  const found = [[3], [1], [0, 1]].map((start) => {
    const { line, quick } = merging(start)
    return [isWaitedForAtMerge(line, 2, quick.restIsKnown), waitsToMerge(line, quick, 2)]
  })
  expect(found).toEqual([
    [false, NONE],
    [true, 1],
    [true, 0],
  ])
})

test('who will be at rest later is waited with, gets a timer, and does not start now', () => {
  const { line, quick } = merging([0])
  line.moves.carrierPhase[0] = MOVING
  line.moves.carrierPath[0] = 2
  quick.restAt[0] = 7
  quick.restIsKnown[0] = 1
  quick.known = 1
  expect([isWaitedForAtMerge(line, 2, quick.restIsKnown), waitsToMerge(line, quick, 2)]).toEqual([true, NONE])
  expect([quick.known, line.queue.firstTime(), line.queue.first()]).toEqual([0, 7, line.slots.arrivalSlot + 2])
})

test('of several the longest waiting goes first; where a stop may hold one of them it is not said here', () => {
  const { line, quick } = merging([0, 1])
  line.moves.carrierSince[0] = 5
  expect(waitsToMerge(line, quick, 2)).toBe(1)
  line.stops.zoneHeld[1] = 1
  expect(waitsToMerge(line, { ...quick, mayHold: true }, 2)).toBe(SEVERAL)
})
