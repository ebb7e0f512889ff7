/** A carrier's stay in a zone, from rest to done: duties, release, change of position. (MODEL.md §4, §5) */
import { drawInOrder } from '../draw.ts'
import { dutyAhead, dutyApplies } from '../dutyAhead.ts'
import { makeRoom } from '../growingList.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from '../result.ts'
import { LOAD_DUTY, NONE, UNLOAD_DUTY, WORK_DUTY } from '../state.ts'
import { addWork, markTasks } from '../station.ts'
import { putProduct } from '../supply.ts'
import { addToTally, VALUE } from '../tally.ts'
import { change } from './change.ts'
import { READY, type Sweep } from './sweep.ts'
import { tellCarrier, tellStation, tellStationIn, tellZone } from './told.ts'
import { counts, within } from './windowed.ts'
import { openFrom, spend } from './work.ts'

const Z_CLAIMED = ZONE_STATES.indexOf('claimed')
const Z_WORKING = ZONE_STATES.indexOf('working')
const Z_OTHER = ZONE_STATES.indexOf('other')
const S_PENDING = STATION_STATES.indexOf('waiting for product')
const S_EXCHANGING = STATION_STATES.indexOf('exchanging')
const C_MOVING = CARRIER_STATES.indexOf('moving')
const C_WORKED = CARRIER_STATES.indexOf('worked on')
const C_WITH_PRODUCT = CARRIER_STATES.indexOf('waiting with product')
const C_EMPTY = CARRIER_STATES.indexOf('waiting empty')

/** Place in CARRIER_STATES of a carrier that stands and is not worked on. */
export function waiting(sweep: Sweep, carrier: number): number {
  return sweep.line.carrierSerial[carrier] === NONE ? C_EMPTY : C_WITH_PRODUCT
}

/** The carrier has come to rest at `rest`: works out until when it stays, and leaves it READY. */
export function stay(sweep: Sweep, carrier: number, zone: number, rest: number): void {
  const { line } = sweep
  tellCarrier(sweep, carrier, C_MOVING, rest)
  tellZone(sweep, zone, Z_CLAIMED, rest)
  tellStationIn(sweep, zone, S_EXCHANGING, rest)
  let at = rest
  const station = line.zoneStation[zone]!
  if (station !== NONE && dutyAhead(line, carrier, zone)) at = serve(sweep, carrier, zone, station, at)
  else if (station !== NONE) line.stationServed[station] = 0
  if (line.zoneChanges[zone] === 1) {
    at = change(sweep, zone, at, line.changeSeconds[2 * zone + line.pathFromPosition[zone]!]!, Z_OTHER)
    tellCarrier(sweep, carrier, waiting(sweep, carrier), at)
    tellStationIn(sweep, zone, S_EXCHANGING, at)
  }
  sweep.mode[carrier] = READY
  sweep.readyAt[carrier] = at
}

/** All duties and the release; returns the instant at which nothing is left to do. */
function serve(sweep: Sweep, carrier: number, zone: number, station: number, rest: number): number {
  const { line } = sweep
  line.stationServed[station] = 1
  let at = rest
  for (let duty = UNLOAD_DUTY; duty <= WORK_DUTY; duty++) {
    if (!dutyApplies(line, station, duty, carrier)) continue
    const start = begin(sweep, carrier, zone, station, at)
    if (duty === LOAD_DUTY) load(sweep, carrier, start)
    // the work's seconds are summed in the station's timer slot, which no timer uses here
    const slot = line.workSlot + station
    line.queue.times[slot] = 0
    addWork(line, slot, station, duty, carrier)
    at = end(sweep, carrier, zone, spend(sweep, station, start, line.queue.times[slot]!, true))
    markTasks(line, station, duty, carrier)
    if (duty === UNLOAD_DUTY) unload(sweep, carrier, at)
  }
  const release = line.releaseSampler[station]!
  if (release === NONE) return at
  const start = begin(sweep, carrier, zone, station, at)
  drawInOrder(line, release, line.releaseStream[station]!)
  return end(sweep, carrier, zone, spend(sweep, station, start, line.drawn[0]!, false))
}

/** Waits until nothing holds the station. */
function begin(sweep: Sweep, carrier: number, zone: number, station: number, at: number): number {
  const start = openFrom(sweep, station, at)
  tellStation(sweep, station, S_PENDING, start)
  tellZone(sweep, zone, Z_OTHER, start)
  tellCarrier(sweep, carrier, waiting(sweep, carrier), start)
  return start
}

function end(sweep: Sweep, carrier: number, zone: number, at: number): number {
  tellZone(sweep, zone, Z_WORKING, at)
  tellCarrier(sweep, carrier, C_WORKED, at)
  if (at <= sweep.last) sweep.line.events++
  return at
}

function load(sweep: Sweep, carrier: number, at: number): void {
  putProduct(sweep.line, carrier)
  sweep.line.carrierLoaded[carrier] = at
  if (counts(sweep, at)) sweep.line.collector.loads++
}

function unload(sweep: Sweep, carrier: number, at: number): void {
  const { line } = sweep
  const { collector } = line
  const loaded = line.carrierLoaded[carrier]!
  line.carrierSerial[carrier] = NONE
  collector.products[0]! += within(sweep, loaded, at)
  if (!counts(sweep, at)) return
  collector.timeInLine[VALUE] = at - loaded
  addToTally(collector.timeInLine)
  makeRoom(collector.outputs)
  collector.outputs.values[collector.outputs.length++] = at
}
