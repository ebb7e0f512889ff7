/**
 * Needs of a stay at quick instants (quickCalls.ts) while nothing else waits that could start now: then there is no order of who is served first to keep, and what the duty needs is
 * taken, or not, at once. (MODEL.md §1, §6, §8)
 */
import { hasProductFor, reserveProduct } from '../goods/arrivals.ts'
import { canReceive, reserveReceiver } from '../goods/receiver.ts'
import { nearestFree, sendWalking, takeWhereHeStands, waitsForHands, walkTo } from '../operators/operators.ts'
import type { Line } from '../state/line.ts'
import { addTo, NONE, takeAt } from '../state/lists.ts'
import { takeLowest } from '../state/lowestFirst.ts'
import { WORK_PENDING } from '../state/moves.ts'
import { LOAD_DUTY, UNLOAD_DUTY } from '../state/work.ts'
import { waitingState } from '../telling/judge.ts'
import { C_WORKED, S_NO_OPERATOR, S_NO_PRODUCT, S_NO_RECEIVER, S_WORKING, Z_OTHER, Z_WORKING } from '../telling/states.ts'
import { canSetAside, isPrepared } from '../work/calls.ts'
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

/** What becomes of a duty that is next: nothing is done here, it starts, or it waits. */
export const ELSEWHERE = 0
export const STARTS = 1
export const WAITS = 2

/** Takes what the duty needs, as far as it is there: its product or place, and its operator; it starts, or waits for what it lacks. ELSEWHERE: nothing is done. */
export function serveAlone(line: Line, station: number, carrier: number, duty: number): number {
  const { calls, goods, staff, work } = line
  if (!isQuiet(line)) return ELSEWHERE
  let operator: number = NONE
  const needs = calls.stationNeeds[station]!
  const lacks = calls.stationThere[station]! < needs
  if (lacks) {
    if (needs > 1 || calls.stationCalled[station] === 1) return ELSEWHERE
    operator = nearestFree(line, station)
  }
  work.stationDuty[station] = duty
  if (duty === LOAD_DUTY) {
    if (!hasProductFor(line, station)) return waitForGoods(line, station, carrier, S_NO_PRODUCT)
    reserveProduct(line, station)
  } else if (duty === UNLOAD_DUTY && goods.receiverSampler[station] !== NONE) {
    if (!canReceive(line, station)) return waitForGoods(line, station, carrier, S_NO_RECEIVER)
    reserveReceiver(line, station)
  }
  takeCall(line, station)
  if (lacks) {
    if (operator === NONE) addTo(calls.callList, station)
    else if (staff.walkSeconds[walkTo(line, operator, station)]! > 0) sendWalking(line, operator, station)
    else takeWhereHeStands(line, operator, station)
    if (calls.stationThere[station]! < needs) return wait(line, station, carrier, S_NO_OPERATOR)
  }
  startWorking(line, station, carrier)
  return STARTS
}

function waitForGoods(line: Line, station: number, carrier: number, is: number): number {
  line.calls.stationAside[station] = 0
  addTo(line.calls.asideList, station)
  return wait(line, station, carrier, is)
}

function wait(line: Line, station: number, carrier: number, is: number): number {
  line.moves.carrierPhase[carrier] = WORK_PENDING
  settleZone(line, line.work.stationZone[station]!, Z_OTHER)
  settleCarrier(line, carrier, waitingState(line, carrier))
  settleStation(line, station, is)
  return WAITS
}

/**
 * A product has come, or a place at a receiver has turned free, where one station waits for such a thing and nothing else can start: its duty starts if that is all it lacked.
 * NONE: this is not so, and nothing is done.
 */
export function startsSupplied(line: Line): number {
  const { calls, moves, stops, work } = line
  const { asideList } = calls
  if (calls.sendDue || asideList.length !== 1 || work.workList.length > 0 || stops.breaksNow > 0 || waitsForHands(line)) return NONE
  const station = asideList.items[0]!
  const zone = work.stationZone[station]!
  if (stops.stationHeld[station]! > 0 || stops.zoneHeld[zone]! > 0) return NONE
  if (calls.stationThere[station]! < calls.stationNeeds[station]! || !canSetAside(line, station)) return NONE
  takeAt(asideList, 0)
  calls.asideDue = false
  if (work.stationDuty[station] === LOAD_DUTY) reserveProduct(line, station)
  else reserveReceiver(line, station)
  takeCall(line, station)
  startWorking(line, station, moves.zoneCarrier[zone]!)
  return station
}

/** The station has what it needs set aside, and has called in this stay. */
function takeCall({ calls, now }: Line, station: number): void {
  calls.stationAside[station] = 1
  if (calls.stationCalled[station] === 1) return
  calls.stationCalled[station] = 1
  calls.calledAt[station] = now
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
  takeLowest(workList)
  if (isPrepared(line, station)) startWorking(line, station, carrier)
  return station
}

function startWorking(line: Line, station: number, carrier: number): void {
  startDuty(line, station, carrier)
  settleZone(line, line.work.stationZone[station]!, Z_WORKING)
  settleCarrier(line, carrier, C_WORKED)
  settleStation(line, station, S_WORKING)
}
