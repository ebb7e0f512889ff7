import { describe, expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { resetLine } from '../build/start.ts'
import { handleInstant } from '../instant/instant.ts'
import { startRelease } from '../work/station.ts'
import type { Line } from '../state/line.ts'
import { clearList, NONE } from '../state/lists.ts'
import { CLAIMED, DONE, FREE, OCCUPIED, VACATING } from '../state/moves.ts'
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
  const leave = (zone: number) => {
    const before = line.moves.zoneCarrier[zone]!
    line.moves.zoneCarrier[zone] = NONE
    line.moves.zoneState[zone] = VACATING
    becomeFree(line, zone)
    line.moves.zoneCarrier[zone] = before
  }
  leave(1)
  expect(waiting(line)).toEqual([0])
  clearList(line.moves.moveList)
  leave(4)
  expect(waiting(line)).toEqual([1, 2, 3])
  clearList(line.moves.moveList)
  leave(3)
  expect(waiting(line)).toEqual([1, 2])
})

test('a carrier that is done waits from now on', () => {
  const line = lineAtStart()
  line.now = 7
  becomeDone(line, 0, 0)
  expect([line.moves.carrierPhase[0], line.moves.carrierSince[0], waiting(line)]).toEqual([DONE, 7, [0]])
})

describe('what cannot be is said at once, in any run', () => {
  /** Carrier 0 has left Z0 for the station in Z1, which is claimed for it; carrier 1 has left Z2. */
  function moving(): Line {
    const line = buildLine(smallLoop({ zones: 5, start: [0, 2], move: 4, clear: 5, stations: [{ at: 1, load: 1, release: 1 }] }))
    resetLine(line, 'a', 0)
    handleInstant(line)
    return line
  }
  function goOn(line: Line): void {
    for (let instants = 0; instants < 20; instants++) {
      line.now = line.queue.firstTime()
      handleInstant(line)
    }
  }

  test('an unspoilt line goes on', () => expect(() => goOn(moving())).not.toThrow())

  test('a claim of a zone that a carrier counts in', () => {
    const line = moving()
    line.moves.zoneCarrier[4] = 0
    expect(() => claim(line, 4, 1)).toThrow('a zone is claimed that a carrier counts in')
  })

  test('a rest in a zone that is another one’s', () => {
    const line = moving()
    line.moves.zoneClaimant[1] = 1
    expect(() => goOn(line)).toThrow('a carrier comes to rest in a zone that was not claimed for it')
  })

  test('a carrier done where it does not stand, or let go there', () => {
    const line = moving()
    expect(() => becomeDone(line, 0, 1)).toThrow('a carrier is done where it does not stand')
    expect(() => startRelease(line, 0, 0)).toThrow('a carrier is let go that does not stand at the station')
  })

  test('a zone that turns free and was not left', () => {
    const line = moving()
    expect(() => becomeFree(line, 1)).toThrow('a zone turns free that nobody has left')
  })
})
