import { expect, test } from 'vitest'
import { calledStations, stationStateOf } from '../../../../tests/helpers/calledStations.ts'
import { addTo, clearList } from '../state/lists.ts'
import { DONE, WORK_PENDING, WORKING } from '../state/moves.ts'
import { LOAD_DUTY, WORK_DUTY } from '../state/work.ts'
import { isQuiet, startsAlone, startsManned } from './quickAlone.ts'

test('a line is quiet where nobody waits for a product, a call or a push, and no break is under way', () => {
  const line = calledStations()
  const { calls } = line
  expect([isQuiet(line), calls.asideDue, calls.sendDue]).toEqual([true, false, false])
  calls.sendDue = true
  addTo(calls.callList, 1)
  expect([isQuiet(line), calls.sendDue]).toEqual([false, true])
  clearList(calls.callList)
  line.stops.breaksNow = 1
  expect(isQuiet(line)).toBe(false)
})

test('a duty starts at once with the operator who stands there; where he has to walk, or is busy, nothing is done', () => {
  const line = calledStations()
  expect([startsAlone(line, 1, 1, WORK_DUTY), line.moves.carrierPhase[1], line.queue.size]).toEqual([false, DONE, 0])
  expect([startsAlone(line, 0, 0, LOAD_DUTY), line.moves.carrierPhase[0], line.queue.firstTime(), stationStateOf(line, 0)]).toEqual([
    true,
    WORKING,
    10,
    'working',
  ])
  expect([line.staff.operatorTask[0], line.staff.operatorsFree, line.calls.stationThere[0], line.calls.stationAside[0]]).toEqual([
    0, 0, 1, 1,
  ])
  expect(startsAlone(line, 1, 1, WORK_DUTY)).toBe(false)
})

test('when the walk is over the duty starts; a station that is held takes what comes, and nothing is done here', () => {
  const line = calledStations()
  isQuiet(line)
  line.moves.carrierPhase[1] = WORK_PENDING
  line.work.stationDuty[1] = WORK_DUTY
  line.calls.stationAside[1] = 1
  line.calls.stationThere[1] = 1
  addTo(line.work.workList, 1)
  line.stops.stationHeld[1] = 1
  expect([startsManned(line), line.work.workList.length]).toEqual([-1, 1])
  line.stops.stationHeld[1] = 0
  expect([
    startsManned(line),
    line.work.workList.length,
    line.moves.carrierPhase[1],
    line.queue.firstTime(),
    stationStateOf(line, 1),
  ]).toEqual([1, 0, WORKING, 20, 'working'])
})
