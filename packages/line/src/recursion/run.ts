/**
 * The recursion: one closed loop without an event queue. (MODEL.md §12)
 *
 * A carrier leaves a zone when it is done there and the zones ahead have been left and cleared: so each carrier can be taken as far as the one ahead has been
 * taken, front to back, round and round. Stops that only lengthen one stay (breakdowns of stations and transfers on operating time, breaks with the conveyor
 * running) are worked out on the way. `canRecur.ts` says which lines this holds for; results are those of the event engine, to the last bit.
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
import type { Pieces } from '../instant/pieces.ts'
import { PACE_CLEAR, REST, SPEED } from '../moves/motion.ts'
import { advanceAll } from './advance.ts'
import { MODE_LOOKS, PLAIN_MOVE, type Recursion } from './recursion.ts'
import { addCarrierSeconds, addStationSeconds, addStationSecondsIn, addZoneSeconds } from './seconds.ts'
import { counts, within } from './windowed.ts'

/** Takes all carriers to the end of the window and tells everything that the collector holds. */
export function* recur(recursion: Recursion): Pieces<void> {
  yield* advanceAll(recursion)
  finish(recursion)
}

/** Tells what is left up to the end of the window. */
function finish(recursion: Recursion): void {
  const { line, last } = recursion
  const { collector } = line
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    const zone = line.moves.carrierZone[carrier]!
    const ready = recursion.readyAt[carrier]!
    if (recursion.mode[carrier] === MODE_LOOKS) {
      if (ready > recursion.lookAt[carrier]! && ready <= last) line.events++
      addStationSecondsIn(recursion, zone, S_EXCHANGING, ready)
    }
    addCarrierSeconds(recursion, carrier, waitingState(line, carrier), ready, last)
    addZoneSeconds(recursion, zone, Z_BLOCKED, Math.max(ready, recursion.heldUntil[zone]!), last)
    addLastBlock(recursion, zone, ready)
    collector.zoneSeconds[zone * ZONE_WIDTH + OCCUPIED_SECONDS]! += last - recursion.enteredAt[carrier]!
    if (line.goods.carrierSerial[carrier] !== NONE) collector.products[0]! += within(recursion, line.goods.carrierLoaded[carrier]!, last)
    addMoving(recursion, carrier)
  }
  for (let zone = 0; zone < line.zones; zone++) {
    const isAside = line.moves.zoneCarrier[zone] === NONE && recursion.asideFor[zone] !== NONE
    if (isAside) {
      recursion.asideSeconds[zone]! += within(recursion, recursion.asideSince[zone]!, last)
      addStationSecondsIn(recursion, zone, S_EXCHANGING, last)
    } else if (line.moves.zoneCarrier[zone] === NONE) {
      addStationSecondsIn(recursion, zone, S_EXCHANGING, Math.min(recursion.freeAt[zone]!, last))
      addStationSecondsIn(recursion, zone, S_STARVED, last)
    }
    addPlainMoves(recursion, zone)
    addRest(recursion, zone)
  }
  countBreaks(recursion, line)
}

/** The carrier that stands in the zone since `ready` blocks its station to the end of the window. */
function addLastBlock(recursion: Recursion, zone: number, ready: number): void {
  const { line, last } = recursion
  const station = line.work.zoneStation[zone]!
  if (station === NONE) return
  if (recursion.hasOwnSeconds[station] === 1) addStationSeconds(recursion, station, S_BLOCKED, last)
  else {
    const { stationSeconds } = line.collector
    const longest = station * STATION_WIDTH + LONGEST_BLOCK
    stationSeconds[longest] = Math.max(stationSeconds[longest]!, within(recursion, ready, last))
  }
}

/** The plain moves out of the zone that were only counted: each vacates it for the time that its pace says, the last one perhaps beyond the end of the window. */
function addPlainMoves(recursion: Recursion, zone: number): void {
  if ((recursion.moveFlags[zone]! & PLAIN_MOVE) === 0) return
  const { moves, collector } = recursion.line
  const clear = moves.pathPace[zone]! + PACE_CLEAR
  let seconds = 0
  for (const start of [REST, SPEED]) {
    const count = recursion.plainMoves[2 * zone + start]!
    collector.movesOut[zone]! += count
    seconds += count * moves.paceSeconds[clear + start]!
  }
  if (moves.zoneCarrier[zone] === NONE) seconds -= Math.max(recursion.freeAt[zone]! - recursion.last, 0)
  collector.zoneSeconds[zone * ZONE_WIDTH + Z_VACATING]! += seconds
}

/**
 * A carrier that counts in the zone and does not stand there is on its way in: the zone is claimed, as it is while it is set aside. What is left is free.
 * A station without stops follows its zone.
 */
function addRest(recursion: Recursion, zone: number): void {
  const { line } = recursion
  const { zoneSeconds, stationSeconds } = line.collector
  const base = zone * ZONE_WIDTH
  const stands =
    zoneSeconds[base + Z_WORKING]! + zoneSeconds[base + Z_BLOCKED]! + zoneSeconds[base + Z_OTHER]! + recursion.heldSeconds[zone]!
  zoneSeconds[base + Z_CLAIMED] = zoneSeconds[base + OCCUPIED_SECONDS]! + recursion.asideSeconds[zone]! - stands
  let free = recursion.last - recursion.warmup
  for (let state = 0; state < ZONE_SINCE; state++) if (state !== Z_FREE) free -= zoneSeconds[base + state]!
  zoneSeconds[base + Z_FREE] = free
  const station = line.work.zoneStation[zone]!
  if (station === NONE || recursion.hasOwnSeconds[station] === 1) return
  const own = station * STATION_WIDTH
  stationSeconds[own + S_WORKING] = zoneSeconds[base + Z_WORKING]!
  stationSeconds[own + S_BLOCKED] = zoneSeconds[base + Z_BLOCKED]!
  stationSeconds[own + S_EXCHANGING] = zoneSeconds[base + Z_CLAIMED]! + zoneSeconds[base + Z_VACATING]! + zoneSeconds[base + Z_OTHER]!
  stationSeconds[own + S_STARVED] = free
}

/** A carrier moves whenever it does not stand. */
function addMoving(recursion: Recursion, carrier: number): void {
  const { carrierSeconds } = recursion.line.collector
  let seconds = recursion.last - recursion.warmup
  for (let state = 0; state < CARRIER_SINCE; state++) if (state !== C_MOVING) seconds -= carrierSeconds[carrier * CARRIER_WIDTH + state]!
  carrierSeconds[carrier * CARRIER_WIDTH + C_MOVING] = seconds
}

/** Breaks begun in the window, and their time by station. */
function countBreaks(recursion: Recursion, line: Line): void {
  const { causes } = line.collector
  const cause = line.sources
  let open = 0
  for (let k = 0; k < line.stops.breakTimes.length; k++) {
    const at = line.stops.breakTimes[k]!
    if (at > recursion.last) break
    if (k === 0 || line.stops.breakTimes[k - 1] !== at) line.events++
    if (line.stops.breakSteps[k] === 1 && open === 0 && counts(recursion, at)) causes.count[cause]!++
    open += line.stops.breakSteps[k]!
  }
  for (let k = 0; k < recursion.breakStart.length; k++)
    causes.seconds[cause]! += within(recursion, recursion.breakStart[k]!, recursion.breakEnd[k]!)
  for (let station = 0; station < line.stations; station++) {
    if (line.stops.stationBreaks[station] === 1) causes.stationSeconds[station * causes.length + cause] = causes.seconds[cause]!
  }
}
