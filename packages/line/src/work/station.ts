/** Stations: the duties of a stay, one after the other, and the release. (MODEL.md §5) */
import { assert } from '@loopwright/kernel'
import { takeFromQueue } from '../goods/arrivals.ts'
import { isPrepared, prepareDuty } from './calls.ts'
import { drawForProduct, drawInOrder } from './draw.ts'
import { dutyAhead, dutyApplies } from '../moves/dutyAhead.ts'
import { operateStation, stopStation } from '../stops/operation.ts'
import { freeStation } from '../operators/operators.ts'
import { deliver } from '../goods/receiver.ts'
import { drawAgain, isTaskDue, judgeProduct } from '../goods/rejects.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { addInOrder, takeLowest } from '../state/lowestFirst.ts'
import { OCCUPIED, RELEASE_PENDING, RELEASING, WORK_PENDING, WORKING } from '../state/moves.ts'
import { LOAD_DUTY, UNLOAD_DUTY, WORK_DUTY } from '../state/work.ts'
import { hasProduct, takeProduct } from '../goods/supply.ts'
import { holdTimer, resumeTimer, startTimer } from '../state/timer.ts'
import { DUTY_END, DUTY_START, RELEASE_END, RELEASE_START, UNLOAD } from '../telling/trace.ts'
import { leaveWork } from '../moves/transfer.ts'

/** The carrier has come to rest: its first duty, or none. */
export function beginStay(line: Line, carrier: number, zone: number): void {
  const { work } = line
  const station = work.zoneStation[zone]!
  if (station === NONE || !dutyAhead(line, carrier, zone)) {
    leaveWork(line, carrier, zone)
    return
  }
  work.stationServed[station] = 1
  nextDuty(line, station, carrier, UNLOAD_DUTY)
}

/** The first duty from `from` on that the carrier has at the station; NONE. */
export function firstDuty(line: Line, station: number, carrier: number, from: number): number {
  for (let duty = from; duty <= WORK_DUTY; duty++) if (dutyApplies(line, station, duty, carrier)) return duty
  return NONE
}

/** Goes on with the first duty from `from` on that the carrier has; after the last one, the release. */
function nextDuty(line: Line, station: number, carrier: number, from: number): void {
  const { work, moves } = line
  const zone = work.stationZone[station]!
  line.collector.touch(zone)
  const duty = firstDuty(line, station, carrier, from)
  if (duty !== NONE) {
    work.stationDuty[station] = duty
    moves.carrierPhase[carrier] = WORK_PENDING
    if (line.hasCalls) prepareDuty(line, station, duty)
    addInOrder(work.workList, station)
    return
  }
  if (line.hasRejects) line.rejects.carrierFresh[carrier] = 0
  const release = work.releaseSampler[station]!
  if (release === NONE) {
    if (line.hasCalls) freeStation(line, station)
    leaveWork(line, carrier, zone)
    return
  }
  moves.carrierPhase[carrier] = RELEASE_PENDING
  addInOrder(work.workList, station)
}

function canWork(line: Line, station: number): boolean {
  const { moves, work } = line
  if (line.stops.stationHeld[station]! > 0) return false
  const carrier = moves.zoneCarrier[work.stationZone[station]!]!
  if (carrier === NONE) return false
  const phase = moves.carrierPhase[carrier]!
  if (phase === RELEASE_PENDING) return true
  if (phase !== WORK_PENDING) return false
  return line.hasCalls ? isPrepared(line, station) : work.stationDuty[station] !== LOAD_DUTY || hasProduct(line)
}

/** Starts work or release at the lowest station where it can start; one where it cannot is told again when it can. False: there is none. */
export function startFirstWork(line: Line): boolean {
  const { workList } = line.work
  while (workList.length > 0) {
    const station = takeLowest(workList)
    if (!canWork(line, station)) continue
    startWork(line, station)
    return true
  }
  return false
}

function startWork(line: Line, station: number): void {
  const { moves } = line
  const zone = line.work.stationZone[station]!
  const carrier = moves.zoneCarrier[zone]!
  line.collector.touch(zone)
  if (moves.carrierPhase[carrier] === RELEASE_PENDING) startRelease(line, station, carrier)
  else startDuty(line, station, carrier)
}

export function startRelease(line: Line, station: number, carrier: number): void {
  const { work, moves } = line
  assert(moves.zoneState[work.stationZone[station]!] === OCCUPIED, 'a carrier is let go that does not stand at the station')
  const slot = line.slots.workSlot + station
  line.activity++
  moves.carrierPhase[carrier] = RELEASING
  drawInOrder(line, work.releaseSampler[station]!, work.releaseStream[station]!)
  line.queue.times[slot] = line.now + line.draws.drawn[0]!
  if (line.trace !== null) line.trace.add(line.now, RELEASE_START, station, carrier, 0)
  startTimer(line, slot)
}

/** Starts `stationDuty`. */
export function startDuty(line: Line, station: number, carrier: number): void {
  const slot = line.slots.workSlot + station
  const duty = line.work.stationDuty[station]!
  line.activity++
  line.moves.carrierPhase[carrier] = WORKING
  if (line.trace !== null) line.trace.add(line.now, DUTY_START, station, carrier, duty)
  if (duty === LOAD_DUTY) {
    if (line.hasCalls) takeFromQueue(line, station)
    takeProduct(line, carrier)
  }
  line.queue.times[slot] = line.now
  addWork(line, slot, station, duty, carrier)
  operateStation(line, station)
  startTimer(line, slot)
}

/** Adds to the timer the task times of the duty for the product, of tasks that it has not had yet. */
export function addWork(line: Line, slot: number, station: number, duty: number, carrier: number): void {
  const { goods, work } = line
  const variant = goods.carrierVariant[carrier]!
  const serial = goods.carrierSerial[carrier]!
  for (let entry = work.dutyFirst[3 * station + duty]!; entry < work.dutyFirst[3 * station + duty + 1]!; entry++) {
    const sampler = work.entrySampler[entry * line.variants + variant]!
    const task = work.entryTask[entry]!
    if (sampler === NONE || !isTaskDue(line, carrier, task)) continue
    if (line.hasRejects) drawAgain(line, sampler, task, carrier)
    else drawForProduct(line, sampler, task, serial)
    line.queue.times[slot]! += line.draws.drawn[0]!
  }
}

/** Work or release at the station has ended. */
export function onWorkEnd(line: Line, station: number): void {
  const { work, moves } = line
  const zone = work.stationZone[station]!
  const carrier = moves.zoneCarrier[zone]!
  line.activity--
  if (moves.carrierPhase[carrier] === RELEASING) {
    if (line.trace !== null) line.trace.add(line.now, RELEASE_END, station, carrier, 0)
    if (line.hasCalls) freeStation(line, station)
    leaveWork(line, carrier, zone)
    return
  }
  endDuty(line, station, carrier)
  nextDuty(line, station, carrier, work.stationDuty[station]! + 1)
}

/** What the duty that ends has done to the product. */
export function endDuty(line: Line, station: number, carrier: number): void {
  const duty = line.work.stationDuty[station]!
  if (line.trace !== null) line.trace.add(line.now, DUTY_END, station, carrier, duty)
  if (line.hasRejects) judgeProduct(line, station, duty, carrier)
  else markTasks(line, station, duty, carrier)
  if (duty === UNLOAD_DUTY) {
    takeOff(line, carrier)
    deliver(line, station)
  }
}

/** The product has had the tasks of the duty that its variant has here. */
export function markTasks(line: Line, station: number, duty: number, carrier: number): void {
  const { work } = line
  for (let entry = work.dutyFirst[3 * station + duty]!; entry < work.dutyFirst[3 * station + duty + 1]!; entry++) {
    const has = work.entrySampler[entry * line.variants + line.goods.carrierVariant[carrier]!] !== NONE
    if (has) work.taskDone[carrier * line.tasks + work.entryTask[entry]!] = 1
  }
}

function takeOff(line: Line, carrier: number): void {
  const { goods } = line
  if (line.trace !== null) line.trace.add(line.now, UNLOAD, line.moves.carrierZone[carrier]!, carrier, goods.carrierSerial[carrier]!)
  line.collector.onUnload(carrier)
  goods.carrierSerial[carrier] = NONE
}

/** One more stop or break holds the station: work and release stand still. */
export function holdStation(line: Line, station: number): void {
  line.collector.touch(line.work.stationZone[station]!)
  if (line.stops.stationHeld[station]!++ > 0) return
  holdTimer(line, line.slots.workSlot + station)
  stopStation(line, station)
}

/** One stop or break less; when it was the last, work goes on or may start. */
export function resumeStation(line: Line, station: number): void {
  const { work, calls, moves } = line
  line.collector.touch(work.stationZone[station]!)
  if (--line.stops.stationHeld[station]! > 0) return
  calls.asideDue = true
  calls.sendDue = true
  resumeTimer(line, line.slots.workSlot + station)
  const carrier = moves.zoneCarrier[work.stationZone[station]!]!
  if (carrier !== NONE && moves.carrierPhase[carrier] === WORKING) operateStation(line, station)
  addInOrder(work.workList, station)
}
