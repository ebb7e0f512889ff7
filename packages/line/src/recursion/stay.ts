/** A stay: the duties at a station, the release, and the change of a transfer under the carrier. (MODEL.md §4, §5) */
import { C_WORKED, S_EXCHANGING, S_NO_PRODUCT, Z_OTHER, Z_WORKING } from '../telling/states.ts'
import { CARRIER_WIDTH, ZONE_WIDTH } from '../telling/collect.ts'
import { drawInOrder } from '../work/draw.ts'
import { dutyApplies } from '../moves/dutyAhead.ts'
import { makeRoom } from '../state/growingList.ts'
import { waitingState } from '../telling/judge.ts'
import { NONE } from '../state/lists.ts'
import { LOAD_DUTY, UNLOAD_DUTY, WORK_DUTY } from '../state/work.ts'
import { addWork, markTasks } from '../work/station.ts'
import { putProduct } from '../goods/supply.ts'
import { addToTally, VALUE } from '../telling/tally.ts'
import { change } from './change.ts'
import type { Recursion } from './recursion.ts'
import { addCarrierSeconds, addStationSeconds, addStationSecondsIn, addZoneSeconds } from './seconds.ts'
import { counts, within } from './windowed.ts'
import { openFrom, spend } from './work.ts'

/** Changes to the way out from `recursion.at` on, which becomes the instant at which the transfer stands so. */
export function changeOut(recursion: Recursion, carrier: number, zone: number): void {
  const { line } = recursion
  const start = recursion.at[0]!
  recursion.seconds[0] = line.transfers.changeSeconds[2 * zone + line.transfers.pathFromPosition[zone]!]!
  change(recursion, zone, Z_OTHER)
  const end = recursion.at[0]!
  addCarrierSeconds(recursion, carrier, waitingState(line, carrier), start, end)
  addStationSecondsIn(recursion, zone, S_EXCHANGING, end)
  recursion.at[0] = end
}

/** All duties from the first one on and the release, from rest at `recursion.at`; it becomes the instant at which nothing is left to do. */
export function serve(recursion: Recursion, carrier: number, zone: number, station: number, first: number): void {
  const { line } = recursion
  line.work.stationServed[station] = 1
  for (let duty = first; duty <= WORK_DUTY; duty++) {
    if (duty !== first && !dutyApplies(line, station, duty, carrier)) continue
    begin(recursion, carrier, zone, station)
    if (duty === LOAD_DUTY) load(recursion, carrier, recursion.at[0]!)
    // the work's seconds are summed in the station's timer slot, which no timer uses here
    const slot = line.slots.workSlot + station
    line.queue.times[slot] = 0
    addWork(line, slot, station, duty, carrier)
    recursion.seconds[0] = line.queue.times[slot]!
    worked(recursion, carrier, zone, station, true)
    markTasks(line, station, duty, carrier)
    if (duty === UNLOAD_DUTY) unload(recursion, carrier, recursion.at[0]!)
  }
  const release = line.work.releaseSampler[station]!
  if (release === NONE) return
  begin(recursion, carrier, zone, station)
  drawInOrder(line, release, line.work.releaseStream[station]!)
  recursion.seconds[0] = line.draws.drawn[0]!
  worked(recursion, carrier, zone, station, false)
}

/** Waits until nothing holds the station. */
function begin(recursion: Recursion, carrier: number, zone: number, station: number): void {
  const at = recursion.at[0]!
  if (at >= recursion.downUntil[station]! && at < recursion.pauseAt[station]!) return
  const start = openFrom(recursion, station, at)
  if (start > at) {
    addStationSeconds(recursion, station, S_NO_PRODUCT, start)
    addZoneSeconds(recursion, zone, Z_OTHER, at, start)
    addCarrierSeconds(recursion, carrier, waitingState(recursion.line, carrier), at, start)
  }
  recursion.at[0] = start
}

/** Work or release of `recursion.seconds` from `recursion.at` on. Zone and carrier are told in place: a number handed over a call may cost an allocation. */
function worked(recursion: Recursion, carrier: number, zone: number, station: number, isWork: boolean): void {
  const { zoneSeconds, carrierSeconds } = recursion.line.collector
  const { last, warmup } = recursion
  const start = Math.max(recursion.at[0]!, warmup)
  spend(recursion, station, isWork)
  const end = Math.min(recursion.at[0]!, last)
  if (end > start) {
    zoneSeconds[zone * ZONE_WIDTH + Z_WORKING]! += end - start
    carrierSeconds[carrier * CARRIER_WIDTH + C_WORKED]! += end - start
  }
  if (recursion.at[0]! <= last) recursion.line.events++
}

export function load(recursion: Recursion, carrier: number, at: number): void {
  putProduct(recursion.line, carrier)
  recursion.line.goods.carrierLoaded[carrier] = at
  if (counts(recursion, at)) recursion.line.collector.loads++
  else if (at <= recursion.warmup) recursion.line.collector.loadsBefore++
}

export function unload(recursion: Recursion, carrier: number, at: number): void {
  const { line } = recursion
  const { collector } = line
  const loaded = line.goods.carrierLoaded[carrier]!
  line.goods.carrierSerial[carrier] = NONE
  collector.products[0]! += within(recursion, loaded, at)
  if (!counts(recursion, at)) {
    if (at <= recursion.warmup) collector.outputBefore++
    return
  }
  collector.timeInLine[VALUE] = at - loaded
  addToTally(collector.timeInLine)
  makeRoom(collector.outputs)
  collector.outputs.values[collector.outputs.length++] = at
}
