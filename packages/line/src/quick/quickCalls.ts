/** Stays whose duties need products, receivers or operators that are kept, and what such a need waits for, at quick instants (quick.ts). (MODEL.md §5, §6, §8) */
import { onProductArrival } from '../goods/arrivals.ts'
import { onReceiverEnd } from '../goods/receiver.ts'
import { handleInstant } from '../instant/instant.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { addInOrder } from '../state/lowestFirst.ts'
import { RELEASING, WORK_PENDING } from '../state/moves.ts'
import { UNLOAD_DUTY } from '../state/work.ts'
import { maySend, sendFirst } from '../moves/send.ts'
import { becomeDone } from '../moves/zone.ts'
import { freeStation, onWalkEnd } from '../operators/operators.ts'
import { prepareDuty, setFirstAside } from '../work/calls.ts'
import { endDuty, firstDuty, startFirstWork, startRelease } from '../work/station.ts'
import { ELSEWHERE, isQuiet, serveAlone, STARTS, startsManned, startsSupplied } from './quickAlone.ts'
import { settleRests } from './quickRest.ts'
import type { Quick } from './quickZones.ts'

/** The carrier has come to rest at the station: its first duty is prepared, and what can start does. False: it has none. */
export function startsStayCalled(line: Line, quick: Quick, station: number, carrier: number): boolean {
  const duty = firstDuty(line, station, carrier, UNLOAD_DUTY)
  if (duty === NONE) return false
  line.work.stationServed[station] = 1
  prepare(line, quick, station, carrier, duty)
  return true
}

/** A duty or the release has ended: what follows starts. False: the carrier may leave. */
export function goesOnCalled(line: Line, quick: Quick, station: number, carrier: number): boolean {
  const { work } = line
  if (line.moves.carrierPhase[carrier] !== RELEASING) {
    endDuty(line, station, carrier)
    const duty = firstDuty(line, station, carrier, work.stationDuty[station]! + 1)
    if (duty !== NONE) {
      prepare(line, quick, station, carrier, duty)
      return true
    }
    if (line.hasRejects) line.rejects.carrierFresh[carrier] = 0
    if (work.releaseSampler[station] !== NONE) {
      startRelease(line, station, carrier)
      return true
    }
  }
  freeStation(line, station)
  if (isQuiet(line) && !endsNow(line)) return false
  startCalled(line)
  if (isOver(line)) {
    line.collector.judge()
    return false
  }
  becomeDone(line, carrier, work.stationZone[station]!)
  leaveRest(line, quick)
  return true
}

/** A walk has ended, a product has come, or a receiver is done. */
export function onCall(line: Line, quick: Quick, slot: number): void {
  line.events++
  const { supplySlot, receiverSlot } = line.slots
  if (slot >= receiverSlot) onReceiverEnd(line, slot - receiverSlot)
  else if (slot >= supplySlot) onProductArrival(line, slot - supplySlot)
  else onWalkEnd(line, slot - line.slots.operatorSlot)
  if (isQuiet(line) && !endsNow(line)) return
  const station = line.calls.asideDue ? startsSupplied(line) : startsManned(line)
  if (station !== NONE) {
    leaveWhatEndsNow(line, quick, station)
    return
  }
  startCalled(line)
  if (isOver(line)) line.collector.judge()
  else leaveRest(line, quick)
}

function prepare(line: Line, quick: Quick, station: number, carrier: number, duty: number): void {
  const becomes = serveAlone(line, station, carrier, duty)
  if (becomes === STARTS) leaveWhatEndsNow(line, quick, station)
  if (becomes !== ELSEWHERE) return
  const { work } = line
  work.stationDuty[station] = duty
  line.moves.carrierPhase[carrier] = WORK_PENDING
  line.collector.touch(work.stationZone[station]!)
  prepareDuty(line, station, duty)
  addInOrder(work.workList, station)
  startCalled(line)
  if (isOver(line)) line.collector.judge()
  else leaveRest(line, quick)
}

/** Sets aside, sends and starts work, one after the other, as long as nothing ends in no time. */
function startCalled(line: Line): void {
  const { calls } = line
  const { workList } = line.work
  while (
    !endsNow(line) &&
    ((calls.asideDue && setFirstAside(line)) || (maySend(line) && sendFirst(line)) || (workList.length > 0 && startFirstWork(line)))
  ) {}
}

/** Whether something ends at this instant still; asked without a time that crosses a call. */
function endsNow({ queue, now }: Line): boolean {
  return queue.size > 0 && queue.times[queue.first()]! === now
}

const isOver = (line: Line): boolean => line.moves.moveList.length === 0 && !endsNow(line)

/** Work that takes no time ends at this instant still. */
function leaveWhatEndsNow(line: Line, quick: Quick, station: number): void {
  if (!endsNow(line)) return
  line.collector.touch(line.work.stationZone[station]!)
  leaveRest(line, quick)
}

/** What is left of the instant is handled as any other. */
function leaveRest(line: Line, quick: Quick): void {
  settleRests(line, quick)
  handleInstant(line)
}
