/**
 * The recursion: one closed loop without an event queue. (MODEL.md §12)
 *
 * A carrier leaves a zone when it is done there and the zones ahead have been left and cleared: so each carrier can be taken as far as the one ahead has been
 * taken, front to back, round and round. Stops that only lengthen one stay (breakdowns of stations and transfers on operating time, breaks with the conveyor
 * running) are worked out on the way. `canRecur` says which lines this holds for; results are those of the event engine, to the last bit.
 */
import {
  C_MOVING,
  S_BLOCKED,
  S_EXCHANGING,
  S_STARVED,
  S_WORKING,
  Z_BLOCKED,
  Z_CLAIMED,
  Z_FREE,
  Z_OTHER,
  Z_VACATING,
  Z_WORKING,
} from '../telling/states.ts'
import { CARRIER_SINCE, CARRIER_WIDTH, LONGEST_BLOCK, OCCUPIED_SECONDS, STATION_WIDTH, ZONE_SINCE, ZONE_WIDTH } from '../telling/collect.ts'
import { waitingState } from '../telling/judge.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { advanceAll } from './advance.ts'
import { LOOKS, type Sweep } from './sweep.ts'
import { tellCarrier, tellStation, tellStationIn, tellZone } from './told.ts'
import { counts, within } from './windowed.ts'

/** Takes all carriers to the end of the window and tells everything that the collector holds. */
export function recur(sweep: Sweep): void {
  advanceAll(sweep)
  finish(sweep)
}

/** Tells what is left up to the end of the window. */
function finish(sweep: Sweep): void {
  const { line, last } = sweep
  const { collector } = line
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    const zone = line.moves.carrierZone[carrier]!
    const ready = sweep.readyAt[carrier]!
    if (sweep.mode[carrier] === LOOKS) {
      if (ready > sweep.lookAt[carrier]! && ready <= last) line.events++
      tellStationIn(sweep, zone, S_EXCHANGING, ready)
    }
    tellCarrier(sweep, carrier, waitingState(line, carrier), ready, last)
    tellZone(sweep, zone, Z_BLOCKED, Math.max(ready, sweep.heldUntil[zone]!), last)
    tellLastBlock(sweep, zone, ready)
    collector.zoneSeconds[zone * ZONE_WIDTH + OCCUPIED_SECONDS]! += last - sweep.enteredAt[carrier]!
    if (line.goods.carrierSerial[carrier] !== NONE) collector.products[0]! += within(sweep, line.goods.carrierLoaded[carrier]!, last)
    tellMoving(sweep, carrier)
  }
  for (let zone = 0; zone < line.zones; zone++) {
    const isAside = line.moves.zoneCarrier[zone] === NONE && sweep.asideFor[zone] !== NONE
    if (isAside) {
      sweep.asideSeconds[zone]! += within(sweep, sweep.asideSince[zone]!, last)
      tellStationIn(sweep, zone, S_EXCHANGING, last)
    } else if (line.moves.zoneCarrier[zone] === NONE) {
      tellStationIn(sweep, zone, S_EXCHANGING, Math.min(sweep.freeAt[zone]!, last))
      tellStationIn(sweep, zone, S_STARVED, last)
    }
    tellRest(sweep, zone)
  }
  countBreaks(sweep, line)
}

/** The carrier that stands in the zone since `ready` blocks its station to the end of the window. */
function tellLastBlock(sweep: Sweep, zone: number, ready: number): void {
  const { line, last } = sweep
  const station = line.work.zoneStation[zone]!
  if (station === NONE) return
  if (sweep.isTold[station] === 1) tellStation(sweep, station, S_BLOCKED, last)
  else {
    const { stationSeconds } = line.collector
    const longest = station * STATION_WIDTH + LONGEST_BLOCK
    stationSeconds[longest] = Math.max(stationSeconds[longest]!, within(sweep, ready, last))
  }
}

/**
 * A carrier that counts in the zone and does not stand there is on its way in: the zone is claimed, as it is while it is set aside. What is left is free.
 * A station without stops follows its zone.
 */
function tellRest(sweep: Sweep, zone: number): void {
  const { line } = sweep
  const { zoneSeconds, stationSeconds } = line.collector
  const base = zone * ZONE_WIDTH
  const stands = zoneSeconds[base + Z_WORKING]! + zoneSeconds[base + Z_BLOCKED]! + zoneSeconds[base + Z_OTHER]! + sweep.heldSeconds[zone]!
  zoneSeconds[base + Z_CLAIMED] = zoneSeconds[base + OCCUPIED_SECONDS]! + sweep.asideSeconds[zone]! - stands
  let free = sweep.last - sweep.warmup
  for (let state = 0; state < ZONE_SINCE; state++) if (state !== Z_FREE) free -= zoneSeconds[base + state]!
  zoneSeconds[base + Z_FREE] = free
  const station = line.work.zoneStation[zone]!
  if (station === NONE || sweep.isTold[station] === 1) return
  const own = station * STATION_WIDTH
  stationSeconds[own + S_WORKING] = zoneSeconds[base + Z_WORKING]!
  stationSeconds[own + S_BLOCKED] = zoneSeconds[base + Z_BLOCKED]!
  stationSeconds[own + S_EXCHANGING] = zoneSeconds[base + Z_CLAIMED]! + zoneSeconds[base + Z_VACATING]! + zoneSeconds[base + Z_OTHER]!
  stationSeconds[own + S_STARVED] = free
}

/** A carrier moves whenever it does not stand. */
function tellMoving(sweep: Sweep, carrier: number): void {
  const { carrierSeconds } = sweep.line.collector
  let seconds = sweep.last - sweep.warmup
  for (let state = 0; state < CARRIER_SINCE; state++) if (state !== C_MOVING) seconds -= carrierSeconds[carrier * CARRIER_WIDTH + state]!
  carrierSeconds[carrier * CARRIER_WIDTH + C_MOVING] = seconds
}

/** Breaks begun in the window, and their time by station. */
function countBreaks(sweep: Sweep, line: Line): void {
  const { causes } = line.collector
  const cause = line.sources
  let open = 0
  for (let k = 0; k < line.stops.breakTimes.length; k++) {
    const at = line.stops.breakTimes[k]!
    if (at > sweep.last) break
    if (k === 0 || line.stops.breakTimes[k - 1] !== at) line.events++
    if (line.stops.breakSteps[k] === 1 && open === 0 && counts(sweep, at)) causes.count[cause]!++
    open += line.stops.breakSteps[k]!
  }
  for (let k = 0; k < sweep.breakStart.length; k++) causes.seconds[cause]! += within(sweep, sweep.breakStart[k]!, sweep.breakEnd[k]!)
  for (let station = 0; station < line.stations; station++) {
    if (line.stops.stationBreaks[station] === 1) causes.stationSeconds[station * causes.length + cause] = causes.seconds[cause]!
  }
}
