/**
 * Needs of a stay at quick instants (quickCalls.ts) while nothing else waits that could start now: then there is no order of who is served first to keep, and what the duty needs is
 * taken, or not, at once. (MODEL.md §1, §6, §8)
 */
import { hasProductFor, reserveProduct } from '../goods/arrivals.ts'
import { canReceive, reserveReceiver } from '../goods/receiver.ts'
import { nearestFree, takeWhereHeStands, waitsForHands, walkTo } from '../operators/operators.ts'
import type { Line } from '../state/line.ts'
import { NONE, takeAt } from '../state/lists.ts'
import { WORK_PENDING } from '../state/moves.ts'
import { LOAD_DUTY, UNLOAD_DUTY } from '../state/work.ts'
import { C_WORKED, S_WORKING, Z_WORKING } from '../telling/states.ts'
import { isPrepared } from '../work/calls.ts'
import { startDuty } from '../work/station.ts'
import { settleCarrier, settleStation, settleZone } from './settle.ts'

/** Whether nothing can be set aside, nobody can be sent and no work can start, as far as that is seen at once. */
export function isQuiet(line: Line): boolean {
  const { calls } = line
  if (line.work.workList.length > 0 || line.stops.breaksNow > 0 || waitsForHands(line)) return false
  if (calls.asideDue) {
    if (calls.asideList.length > 0) return false
    calls.asideDue = false
  }
  if (calls.sendDue) {
    if (calls.callList.length > 0) return false
    calls.sendDue = false
  }
  return true
}

/** Starts the duty if all that it needs is there: its product or place, and its operator where he stands. False: nothing is done. */
export function startsAlone(line: Line, station: number, carrier: number, duty: number): boolean {
  const { calls, goods, work } = line
  if (!isQuiet(line)) return false
  let operator: number = NONE
  const needs = calls.stationNeeds[station]!
  if (calls.stationThere[station]! < needs) {
    if (needs > 1 || calls.stationSent[station]! > 0) return false
    operator = nearestFree(line, station)
    if (operator === NONE || line.staff.walkSeconds[walkTo(line, operator, station)]! > 0) return false
  }
  if (duty === LOAD_DUTY) {
    if (!hasProductFor(line, station)) return false
    reserveProduct(line, station)
  } else if (duty === UNLOAD_DUTY && goods.receiverSampler[station] !== NONE) {
    if (!canReceive(line, station)) return false
    reserveReceiver(line, station)
  }
  calls.stationAside[station] = 1
  if (calls.stationCalled[station] === 0) {
    calls.stationCalled[station] = 1
    calls.calledAt[station] = line.now
  }
  if (operator !== NONE) takeWhereHeStands(line, operator, station)
  work.stationDuty[station] = duty
  startWorking(line, station, carrier)
  return true
}

/** An operator has come to the one station that may start work now, where nothing else can start: its duty starts if nobody is missing. NONE: this is not so, and nothing is done. */
export function startsManned(line: Line): number {
  const { calls, moves, stops, work } = line
  const { workList } = work
  if (calls.asideDue || calls.sendDue || workList.length !== 1 || waitsForHands(line)) return NONE
  const station = workList.items[0]!
  const zone = work.stationZone[station]!
  const carrier = moves.zoneCarrier[zone]!
  if (carrier === NONE || moves.carrierPhase[carrier] !== WORK_PENDING) return NONE
  if (stops.stationHeld[station]! > 0 || stops.zoneHeld[zone]! > 0) return NONE
  takeAt(workList, 0)
  if (isPrepared(line, station)) startWorking(line, station, carrier)
  return station
}

function startWorking(line: Line, station: number, carrier: number): void {
  startDuty(line, station, carrier)
  settleZone(line, line.work.stationZone[station]!, Z_WORKING)
  settleCarrier(line, carrier, C_WORKED)
  settleStation(line, station, S_WORKING)
}
