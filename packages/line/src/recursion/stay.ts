/** A stay: the duties at a station, the release, and the change of a transfer under the carrier. (MODEL.md §4, §5) */
import { C_WORKED, S_EXCHANGING, S_NO_PRODUCT, Z_OTHER, Z_WORKING } from '../telling/states.ts'
import { CARRIER_WIDTH, ZONE_WIDTH } from '../telling/collect.ts'
import { drawInOrder } from '../work/draw.ts'
import { dutyApplies } from '../moves/dutyAhead.ts'
import { makeRoom } from '../build/growingList.ts'
import { waitingState } from '../telling/judge.ts'
import { NONE } from '../state/lists.ts'
import { LOAD_DUTY, UNLOAD_DUTY, WORK_DUTY } from '../state/work.ts'
import { addWork, markTasks } from '../work/station.ts'
import { putProduct } from '../goods/supply.ts'
import { addToTally, VALUE } from '../telling/tally.ts'
import { change } from './change.ts'
import type { Sweep } from './sweep.ts'
import { tellCarrier, tellStation, tellStationIn, tellZone } from './told.ts'
import { counts, within } from './windowed.ts'
import { openFrom, spend } from './work.ts'

/** Changes to the way out from `sweep.at` on, which becomes the instant at which the transfer stands so. */
export function changeOut(sweep: Sweep, carrier: number, zone: number): void {
  const { line } = sweep
  const start = sweep.at[0]!
  sweep.seconds[0] = line.transfers.changeSeconds[2 * zone + line.transfers.pathFromPosition[zone]!]!
  change(sweep, zone, Z_OTHER)
  const end = sweep.at[0]!
  tellCarrier(sweep, carrier, waitingState(line, carrier), start, end)
  tellStationIn(sweep, zone, S_EXCHANGING, end)
  sweep.at[0] = end
}

/** All duties from the first one on and the release, from rest at `sweep.at`; it becomes the instant at which nothing is left to do. */
export function serve(sweep: Sweep, carrier: number, zone: number, station: number, first: number): void {
  const { line } = sweep
  line.work.stationServed[station] = 1
  for (let duty = first; duty <= WORK_DUTY; duty++) {
    if (duty !== first && !dutyApplies(line, station, duty, carrier)) continue
    begin(sweep, carrier, zone, station)
    if (duty === LOAD_DUTY) load(sweep, carrier, sweep.at[0]!)
    // the work's seconds are summed in the station's timer slot, which no timer uses here
    const slot = line.slots.workSlot + station
    line.queue.times[slot] = 0
    addWork(line, slot, station, duty, carrier)
    sweep.seconds[0] = line.queue.times[slot]!
    worked(sweep, carrier, zone, station, true)
    markTasks(line, station, duty, carrier)
    if (duty === UNLOAD_DUTY) unload(sweep, carrier, sweep.at[0]!)
  }
  const release = line.work.releaseSampler[station]!
  if (release === NONE) return
  begin(sweep, carrier, zone, station)
  drawInOrder(line, release, line.work.releaseStream[station]!)
  sweep.seconds[0] = line.draws.drawn[0]!
  worked(sweep, carrier, zone, station, false)
}

/** Waits until nothing holds the station. */
function begin(sweep: Sweep, carrier: number, zone: number, station: number): void {
  const at = sweep.at[0]!
  if (at >= sweep.downUntil[station]! && at < sweep.pauseAt[station]!) return
  const start = openFrom(sweep, station, at)
  if (start > at) {
    tellStation(sweep, station, S_NO_PRODUCT, start)
    tellZone(sweep, zone, Z_OTHER, at, start)
    tellCarrier(sweep, carrier, waitingState(sweep.line, carrier), at, start)
  }
  sweep.at[0] = start
}

/** Work or release of `sweep.seconds` from `sweep.at` on. Zone and carrier are told in place: a number handed over a call may cost an allocation. */
function worked(sweep: Sweep, carrier: number, zone: number, station: number, isWork: boolean): void {
  const { zoneSeconds, carrierSeconds } = sweep.line.collector
  const { last, warmup } = sweep
  const start = Math.max(sweep.at[0]!, warmup)
  spend(sweep, station, isWork)
  const end = Math.min(sweep.at[0]!, last)
  if (end > start) {
    zoneSeconds[zone * ZONE_WIDTH + Z_WORKING]! += end - start
    carrierSeconds[carrier * CARRIER_WIDTH + C_WORKED]! += end - start
  }
  if (sweep.at[0]! <= last) sweep.line.events++
}

export function load(sweep: Sweep, carrier: number, at: number): void {
  putProduct(sweep.line, carrier)
  sweep.line.goods.carrierLoaded[carrier] = at
  if (counts(sweep, at)) sweep.line.collector.loads++
}

export function unload(sweep: Sweep, carrier: number, at: number): void {
  const { line } = sweep
  const { collector } = line
  const loaded = line.goods.carrierLoaded[carrier]!
  line.goods.carrierSerial[carrier] = NONE
  collector.products[0]! += within(sweep, loaded, at)
  if (!counts(sweep, at)) return
  collector.timeInLine[VALUE] = at - loaded
  addToTally(collector.timeInLine)
  makeRoom(collector.outputs)
  collector.outputs.values[collector.outputs.length++] = at
}
