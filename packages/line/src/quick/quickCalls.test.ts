import { expect, test } from 'vitest'
import { calledStations, stationStateOf } from '../../../../tests/helpers/calledStations.ts'
import { staffed } from '../../../../tests/helpers/staffed.ts'
import { buildLine } from '../build/build.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'
import { clearList, NONE } from '../state/lists.ts'
import { WORK_PENDING, WORKING } from '../state/moves.ts'
import { goesOnCalled, onCall, startsStayCalled } from './quickCalls.ts'
import { makeQuick, type Quick } from './quickZones.ts'

/** Of one operator, who stands at S1; the carrier in S2 is loaded. */
function twoStations(): { line: Line; quick: Quick } {
  const line = calledStations()
  return { line, quick: makeQuick(line)! }
}

test('a stay begins at once where the operator stands, and calls where nobody is free', () => {
  const { line, quick } = twoStations()
  expect(startsStayCalled(line, quick, 0, 0)).toBe(true)
  expect([line.moves.carrierPhase[0], line.queue.times[line.slots.workSlot], stationStateOf(line, 0)]).toEqual([WORKING, 10, 'working'])
  expect(startsStayCalled(line, quick, 1, 1)).toBe(true)
  expect([line.moves.carrierPhase[1], line.queue.isPending(line.slots.workSlot + 1), stationStateOf(line, 1)]).toEqual([
    WORK_PENDING,
    false,
    'waiting for operator',
  ])
})

test('an operator who gets free is sent before the carrier leaves; work starts when the walk ends', () => {
  const { line, quick } = twoStations()
  startsStayCalled(line, quick, 0, 0)
  startsStayCalled(line, quick, 1, 1)
  line.now = line.queue.firstTime()
  expect(line.queue.pop()).toBe(line.slots.workSlot)
  line.activity--
  expect(goesOnCalled(line, quick, 0, 0)).toBe(false)
  expect([line.now, line.staff.operatorTask[0], line.queue.firstTime()]).toEqual([10, 1, 15])
  line.now = 15
  onCall(line, quick, line.queue.pop())
  expect([line.moves.carrierPhase[1], line.queue.firstTime(), stationStateOf(line, 1)]).toEqual([WORKING, 35, 'working'])
})

test('work of no time is left to the other instants: all that comes of it is done', () => {
  const line = buildLine(
    staffed({ zones: 6, start: [1], stations: [{ at: 1, load: 0, unload: 0 }], until: 100 }, { operators: [{ stations: [0] }] }),
  )
  resetLine(line, 'a', 0)
  clearList(line.moves.moveList)
  expect(startsStayCalled(line, makeQuick(line)!, 0, 0)).toBe(true)
  expect([line.goods.carrierSerial[0], line.moves.carrierZone[0], line.moves.zoneCarrier[1]]).toEqual([0, 2, NONE])
})
