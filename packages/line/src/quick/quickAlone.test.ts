import { expect, test } from 'vitest'
import { calledStations, stationStateOf } from '../../../../tests/helpers/calledStations.ts'
import { addTo, clearList } from '../state/lists.ts'
import { addInOrder } from '../state/lowestFirst.ts'
import { WORK_PENDING, WORKING } from '../state/moves.ts'
import { LOAD_DUTY, WORK_DUTY } from '../state/work.ts'
import { ELSEWHERE, isQuiet, serveAlone, STARTS, startsManned, startsSupplied, WAITS } from './quickAlone.ts'

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

test('a duty starts at once with the operator who stands there; while he is busy it waits for him', () => {
  const line = calledStations()
  expect([serveAlone(line, 0, 0, LOAD_DUTY), line.moves.carrierPhase[0], line.queue.firstTime(), stationStateOf(line, 0)]).toEqual([
    STARTS,
    WORKING,
    10,
    'working',
  ])
  expect([line.staff.operatorTask[0], line.staff.operatorsFree, line.calls.stationThere[0], line.calls.stationAside[0]]).toEqual([
    0, 0, 1, 1,
  ])
  expect([serveAlone(line, 1, 1, WORK_DUTY), line.moves.carrierPhase[1], stationStateOf(line, 1)]).toEqual([
    WAITS,
    WORK_PENDING,
    'waiting for operator',
  ])
  expect([line.calls.callList.length, line.calls.callList.items[0], line.calls.stationCalled[1], line.calls.sendDue]).toEqual([
    1,
    1,
    1,
    false,
  ])
})

test('where he has to walk he sets off, and the duty waits; one that has called and lacks somebody is not for here to serve', () => {
  const line = calledStations()
  expect([serveAlone(line, 1, 1, WORK_DUTY), line.moves.carrierPhase[1], line.queue.firstTime(), stationStateOf(line, 1)]).toEqual([
    WAITS,
    WORK_PENDING,
    5,
    'waiting for operator',
  ])
  expect([line.calls.callList.length, line.staff.operatorTask[0], line.staff.operatorWalks[0], line.calls.stationSent[1]]).toEqual([
    0, 1, 1, 1,
  ])
  expect(serveAlone(line, 1, 1, WORK_DUTY)).toBe(ELSEWHERE)
})

test('without a product the duty waits for one, and calls nobody', () => {
  const line = calledStations()
  line.goods.nextSerial = line.goods.productsMax
  expect([serveAlone(line, 0, 0, LOAD_DUTY), line.queue.size, stationStateOf(line, 0)]).toEqual([WAITS, 0, 'waiting for product'])
  expect([line.calls.asideList.items[0], line.calls.asideDue, line.calls.stationCalled[0], line.staff.operatorsFree]).toEqual([
    0,
    false,
    0,
    1,
  ])
})

test('when the walk is over the duty starts; a station that is held takes what comes, and nothing is done here', () => {
  const line = calledStations()
  isQuiet(line)
  line.moves.carrierPhase[1] = WORK_PENDING
  line.work.stationDuty[1] = WORK_DUTY
  line.calls.stationAside[1] = 1
  line.calls.stationThere[1] = 1
  addInOrder(line.work.workList, 1)
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

test('a product that comes starts the one duty that waits for it alone; a station that is held goes on waiting', () => {
  const line = calledStations()
  isQuiet(line)
  line.moves.carrierPhase[0] = WORK_PENDING
  line.work.stationDuty[0] = LOAD_DUTY
  line.calls.stationThere[0] = 1
  addTo(line.calls.asideList, 0)
  line.calls.asideDue = true
  line.stops.stationHeld[0] = 1
  expect([startsSupplied(line), line.calls.asideList.length]).toEqual([-1, 1])
  line.stops.stationHeld[0] = 0
  expect([startsSupplied(line), line.calls.asideList.length, line.calls.asideDue, line.calls.stationCalled[0]]).toEqual([0, 0, false, 1])
  expect([line.moves.carrierPhase[0], line.queue.firstTime(), stationStateOf(line, 0)]).toEqual([WORKING, 10, 'working'])
})
