import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'
import { clearList, NONE } from '../state/lists.ts'
import { CLAIMED, DONE, FREE, OCCUPIED } from '../state/moves.ts'
import { becomeDone, becomeFree, claim } from './zone.ts'

const EXIT = { lift: 1, lower: 1, out: 'low', exitClear: true } as const

/** Z2 and Z3 are exit-clear transfers; one carrier in Z0. */
function lineAtStart(): Line {
  const line = buildLine(smallLoop({ zones: 6, start: [0], move: 1, clear: 1, transfers: { 2: EXIT, 3: EXIT } }))
  resetLine(line, 'a', 0)
  clearList(line.moves.moveList)
  return line
}
const waiting = (line: Line) => [...line.moves.moveList.items.subarray(0, line.moves.moveList.length)].sort()

test('a claim takes the zone, and behind exit-clear transfers all up to the next place to stand', () => {
  const line = lineAtStart()
  claim(line, 1, 0)
  expect([...line.moves.zoneState.subarray(0, 6)]).toEqual([OCCUPIED, CLAIMED, FREE, FREE, FREE, FREE])
  claim(line, 2, 0)
  expect([...line.moves.zoneState.subarray(0, 6)]).toEqual([OCCUPIED, CLAIMED, CLAIMED, CLAIMED, CLAIMED, FREE])
  expect([...line.moves.zoneClaimant.subarray(0, 6)]).toEqual([NONE, 0, 0, 0, 0, NONE])
  // what is set aside already stays as it is
  claim(line, 3, 0)
  expect(line.moves.zoneState[5]).toBe(FREE)
})

test('a zone that turns free lets those try who wait before it, and before exit-clear transfers in front of it', () => {
  const line = lineAtStart()
  // somebody stands done in each of them
  for (const zone of [1, 2, 3]) line.moves.zoneCarrier[zone] = 0
  becomeFree(line, 1)
  expect(waiting(line)).toEqual([0])
  clearList(line.moves.moveList)
  becomeFree(line, 4)
  expect(waiting(line)).toEqual([1, 2, 3])
  clearList(line.moves.moveList)
  becomeFree(line, 3)
  expect(waiting(line)).toEqual([1, 2])
})

test('a carrier that is done waits from now on', () => {
  const line = lineAtStart()
  line.now = 7
  becomeDone(line, 0, 0)
  expect([line.moves.carrierPhase[0], line.moves.carrierSince[0], waiting(line)]).toEqual([DONE, 7, [0]])
})
