/** What a duty needs before it can start: a product or a place at the receiver set aside for it, then its operators. (MODEL.md §6, §8) */

import { hasProductFor, reserveProduct } from '../goods/arrivals.ts'
import { canReceive, reserveReceiver } from '../goods/receiver.ts'
import type { LineSpec } from '../spec.ts'
import type { Line } from '../state/line.ts'
import { addTo, makeWorkList, NONE, type PartList, takeAt } from '../state/lists.ts'
import { addInOrder } from '../state/lowestFirst.ts'
import { type Calls, LOAD_DUTY, UNLOAD_DUTY } from '../state/work.ts'

/** @param coverage  by station: operators that are kept */
export function makeCalls(spec: LineSpec, coverage: PartList): Calls {
  const stations = spec.stations.length
  const isKept = (station: number): boolean => coverage.first[station + 1]! > coverage.first[station]!
  return {
    stationAside: new Uint8Array(stations),
    stationNeeds: Int32Array.from(spec.stations, ({ operatorsNeeded }, station) => (isKept(station) ? operatorsNeeded : 0)),
    stationCalled: new Uint8Array(stations),
    calledAt: new Float64Array(stations),
    stationSent: new Int32Array(stations),
    stationThere: new Int32Array(stations),
    asideList: makeWorkList(stations),
    callList: makeWorkList(stations),
    asideDue: true,
    sendDue: true,
  }
}

/** The carrier at the station has this duty next: what has to be set aside is waited for, else the station calls now. */
export function prepareDuty(line: Line, station: number, duty: number): void {
  const { calls } = line
  const needs = duty === LOAD_DUTY || (duty === UNLOAD_DUTY && line.goods.receiverSampler[station] !== NONE)
  if (!needs) {
    calls.stationAside[station] = 1
    call(line, station)
    return
  }
  calls.stationAside[station] = 0
  addTo(calls.asideList, station)
  calls.asideDue = true
}

/** The station calls its operators, once in a stay: those that came stay for the later duties. */
function call(line: Line, station: number): void {
  const { calls } = line
  if (calls.stationCalled[station] === 1) return
  calls.stationCalled[station] = 1
  calls.calledAt[station] = line.now
  if (calls.stationNeeds[station] === 0) return
  addTo(calls.callList, station)
  calls.sendDue = true
}

/** Sets a product or a place at the receiver aside for the lowest station that waits for one and is not held. False: nothing can be set aside. */
export function setFirstAside(line: Line): boolean {
  const { calls, work } = line
  if (!calls.asideDue) return false
  const { asideList } = calls
  let bestPlace = NONE
  for (let place = 0; place < asideList.length; place++) {
    const station = asideList.items[place]!
    if (line.stops.stationHeld[station]! > 0 || !canSetAside(line, station)) continue
    if (bestPlace === NONE || station < asideList.items[bestPlace]!) bestPlace = place
  }
  if (bestPlace === NONE) {
    calls.asideDue = false
    return false
  }
  const station = asideList.items[bestPlace]!
  takeAt(asideList, bestPlace)
  if (work.stationDuty[station] === LOAD_DUTY) reserveProduct(line, station)
  else reserveReceiver(line, station)
  calls.stationAside[station] = 1
  call(line, station)
  line.collector.touch(work.stationZone[station]!) // it waits for its operator from now on, where nobody is free
  addInOrder(work.workList, station)
  return true
}

/** Whether what the waiting station needs is there; holds are not asked for. */
export function canSetAside(line: Line, station: number): boolean {
  return line.work.stationDuty[station] === LOAD_DUTY ? hasProductFor(line, station) : canReceive(line, station)
}

/** Whether the duty that is next at the station has all that it needs. */
export function isPrepared(line: Line, station: number): boolean {
  const { calls } = line
  return calls.stationAside[station] === 1 && calls.stationThere[station]! >= calls.stationNeeds[station]!
}
