/**
 * The recursion: one closed loop without an event queue. (MODEL.md §12)
 *
 * A carrier leaves a zone when it is done there and the zones ahead have been left and cleared: so each carrier can be taken as far as the one ahead has been
 * taken, front to back, round and round. Stops that only lengthen one stay (breakdowns of stations and transfers on operating time, breaks with the conveyor
 * running) are worked out on the way. `canRecur` says which lines this holds for; results are those of the event engine, to the last bit.
 */
import { drawInOrder } from '../draw.ts'
import { dutyAhead } from '../dutyAhead.ts'
import { SPEED } from '../motion.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from '../result.ts'
import { type Line, NONE, SAME_AS_MOVE } from '../state.ts'
import { addToTally, VALUE } from '../tally.ts'
import { change, heldEnd } from './change.ts'
import { stay, waiting } from './stay.ts'
import { LOOKS, READY, type Sweep } from './sweep.ts'
import { tellCarrier, tellStation, tellStationIn, tellZone } from './told.ts'
import { counts, within } from './windowed.ts'

const Z_FREE = ZONE_STATES.indexOf('free')
const Z_CLAIMED = ZONE_STATES.indexOf('claimed')
const Z_BLOCKED = ZONE_STATES.indexOf('blocked')
const Z_VACATING = ZONE_STATES.indexOf('vacating')
const S_BLOCKED = STATION_STATES.indexOf('blocked')
const S_EXCHANGING = STATION_STATES.indexOf('exchanging')
const S_STARVED = STATION_STATES.indexOf('starved')
const C_MOVING = CARRIER_STATES.indexOf('moving')

/** Takes all carriers to the end of the window and tells everything that the collector holds. */
export function recur(sweep: Sweep): void {
  const { order } = sweep
  let idle = 0
  for (let k = 0; idle < order.length; k = k + 1 < order.length ? k + 1 : 0) {
    if (advance(sweep, order[k]!)) idle = 0
    else idle++
  }
  finish(sweep)
}

/** Takes the carrier as far as the one ahead allows. False: not at all. */
function advance(sweep: Sweep, carrier: number): boolean {
  let any = false
  while (step(sweep, carrier)) any = true
  return any
}

/** One move, or the end of a look that failed. False: the zone ahead has not been left yet, or the window is over. */
function step(sweep: Sweep, carrier: number): boolean {
  const { line } = sweep
  const zone = line.carrierZone[carrier]!
  const looks = sweep.mode[carrier] === LOOKS
  if ((looks ? sweep.lookAt[carrier]! : sweep.readyAt[carrier]!) > sweep.last) return false
  const next = line.zoneNext[zone]!
  let open = sweep.heldUntil[next]!
  if (sweep.heldUntil[zone]! > open) open = sweep.heldUntil[zone]!
  if (sweep.asideFor[next] !== carrier) {
    for (let ahead = next; ; ahead = line.zoneNext[ahead]!) {
      if (line.zoneCarrier[ahead] !== NONE || sweep.asideFor[ahead] !== NONE) return false
      if (sweep.freeAt[ahead]! > open) open = sweep.freeAt[ahead]!
      if (line.exitClear[ahead] === 0) break
    }
  }
  if (looks) {
    const at = sweep.lookAt[carrier]!
    if (open <= at) {
      leave(sweep, carrier, zone, at, 1)
      return true
    }
    comeToRest(sweep, carrier, zone)
  }
  const at = Math.max(open, sweep.readyAt[carrier]!)
  if (at > sweep.last) return looks
  leave(sweep, carrier, zone, at, 0)
  return true
}

/** The look has failed: the carrier brakes and is at rest at `readyAt`. */
function comeToRest(sweep: Sweep, carrier: number, zone: number): void {
  const rest = sweep.readyAt[carrier]!
  sweep.mode[carrier] = READY
  if (rest > sweep.lookAt[carrier]! && rest <= sweep.last) sweep.line.events++
  tellCarrier(sweep, carrier, C_MOVING, rest)
  tellZone(sweep, zone, Z_CLAIMED, rest)
  tellStationIn(sweep, zone, S_EXCHANGING, rest)
}

/** The move out of `zone` starts at `at`, from rest (0) or at speed (1). */
function leave(sweep: Sweep, carrier: number, zone: number, at: number, atSpeed: 0 | 1): void {
  const { line } = sweep
  const next = line.zoneNext[zone]!
  if (atSpeed === 0) {
    tellCarrier(sweep, carrier, waiting(sweep, carrier), at)
    tellZone(sweep, zone, Z_BLOCKED, at)
    tellStationIn(sweep, zone, S_BLOCKED, at)
  } else {
    // the carrier goes on moving: its time is told when it stands
    tellZone(sweep, zone, Z_CLAIMED, at)
    tellStationIn(sweep, zone, S_EXCHANGING, at)
  }
  countMove(sweep, carrier, zone, at)
  if (sweep.asideFor[next] !== carrier) claimAhead(sweep, carrier, next, at)
  sweep.asideFor[next] = NONE
  line.collector.occupiedSeconds[zone]! += within(sweep, sweep.occupiedSince[zone]!, at)
  sweep.occupiedSince[next] = at
  line.zoneCarrier[zone] = NONE
  line.zoneCarrier[next] = carrier
  line.carrierZone[carrier] = next
  travel(sweep, carrier, zone, next, at, atSpeed)
}

function countMove(sweep: Sweep, carrier: number, zone: number, at: number): void {
  const { line } = sweep
  const { collector } = line
  const inWindow = counts(sweep, at)
  if (inWindow) collector.movesOut[zone]!++
  const station = line.zoneStation[zone]!
  if (station !== NONE && line.stationServed[station] === 1) {
    line.stationServed[station] = 0
    if (inWindow) collector.cycles[station]!++
  }
  if (zone !== collector.lapZone) return
  const start = line.carrierLapStart[carrier]!
  line.carrierLapStart[carrier] = at
  if (Number.isNaN(start) || !inWindow) return
  collector.lap[VALUE] = at - start
  addToTally(collector.lap)
  collector.carrierLaps[carrier]!++
}

/** Claims the next zone, and behind exit-clear transfers sets aside the zones up to the next place to stand. */
function claimAhead(sweep: Sweep, carrier: number, next: number, at: number): void {
  const { line } = sweep
  for (let zone = next; ; zone = line.zoneNext[zone]!) {
    tellUnused(sweep, zone, at)
    sweep.asideFor[zone] = carrier
    if (line.exitClear[zone] === 0) return
  }
}

/** An empty zone up to `until`: vacating until it was free, then free. */
function tellUnused(sweep: Sweep, zone: number, until: number): void {
  const free = Math.min(sweep.freeAt[zone]!, until)
  tellZone(sweep, zone, Z_VACATING, free)
  tellZone(sweep, zone, Z_FREE, until)
  const station = sweep.line.zoneStation[zone]!
  if (station === NONE) return
  tellStation(sweep, station, S_EXCHANGING, free)
  tellStation(sweep, station, S_STARVED, until)
}

/** The times of the move and of the clear behind it. */
function travel(sweep: Sweep, carrier: number, zone: number, next: number, at: number, atSpeed: 0 | 1): void {
  const { line } = sweep
  const given = line.moveSampler[zone]!
  let seconds = 0
  if (given !== NONE) {
    drawInOrder(line, given, line.moveStream[zone]!)
    seconds = line.drawn[0]!
  }
  sweep.holds = 0
  clearBehind(sweep, zone, at, atSpeed, seconds)
  const stops = line.zoneChanges[next] === 1 || dutyAhead(line, carrier, next)
  const times = 4 * zone + 2 * atSpeed
  if (given !== NONE || stops) {
    const rest = heldEnd(sweep, at, given !== NONE ? seconds : line.moveSeconds[times]!)
    if (rest <= sweep.last) line.events++
    stay(sweep, carrier, next, rest)
    return
  }
  const toSpeed = line.moveSeconds[times + SPEED]!
  const look = heldEnd(sweep, at, toSpeed)
  if (look <= sweep.last) line.events++
  sweep.mode[carrier] = LOOKS
  sweep.lookAt[carrier] = look
  sweep.readyAt[carrier] = heldEnd(sweep, look, line.moveSeconds[times]! - toSpeed)
}

/** When the zone left at `at` is free again. */
function clearBehind(sweep: Sweep, zone: number, at: number, atSpeed: 0 | 1, moveSeconds: number): void {
  const { line } = sweep
  const given = line.clearSampler[zone]!
  let clear = at
  if (given === SAME_AS_MOVE) clear += moveSeconds
  else if (given === NONE) clear += line.clearSeconds[2 * zone + atSpeed]!
  else {
    drawInOrder(line, given, line.clearStream[zone]!)
    clear += line.drawn[0]!
  }
  if (clear <= sweep.last) line.events++
  sweep.freeAt[zone] =
    line.zoneChanges[zone] === 1 ? change(sweep, zone, clear, line.changeSeconds[2 * zone + line.backPosition[zone]!]!, Z_VACATING) : clear
}

/** Tells what is left up to the end of the window. */
function finish(sweep: Sweep): void {
  const { line, last } = sweep
  const { collector } = line
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    const zone = line.carrierZone[carrier]!
    if (sweep.mode[carrier] === LOOKS) comeToRest(sweep, carrier, zone)
    tellCarrier(sweep, carrier, waiting(sweep, carrier), last)
    tellZone(sweep, zone, Z_BLOCKED, last)
    tellStationIn(sweep, zone, S_BLOCKED, last)
    collector.occupiedSeconds[zone]! += within(sweep, sweep.occupiedSince[zone]!, last)
    if (line.carrierSerial[carrier] !== NONE) collector.products[0]! += within(sweep, line.carrierLoaded[carrier]!, last)
  }
  for (let zone = 0; zone < line.zones; zone++) {
    if (line.zoneCarrier[zone] !== NONE) continue
    if (sweep.asideFor[zone] !== NONE) {
      tellZone(sweep, zone, Z_CLAIMED, last)
      tellStationIn(sweep, zone, S_EXCHANGING, last)
    } else tellUnused(sweep, zone, last)
  }
  countBreaks(sweep, line)
}

/** Breaks begun in the window, and their time by station. */
function countBreaks(sweep: Sweep, line: Line): void {
  const { causes } = line.collector
  const cause = line.sources
  let open = 0
  for (let k = 0; k < line.breakTimes.length; k++) {
    const at = line.breakTimes[k]!
    if (at > sweep.last) break
    if (k === 0 || line.breakTimes[k - 1] !== at) line.events++
    if (line.breakSteps[k] === 1 && open === 0 && counts(sweep, at)) causes.count[cause]!++
    open += line.breakSteps[k]!
  }
  for (let k = 0; k < sweep.breakStart.length; k++) causes.seconds[cause]! += within(sweep, sweep.breakStart[k]!, sweep.breakEnd[k]!)
  for (let station = 0; station < line.stations; station++) {
    if (line.stationBreaks[station] === 1) causes.stationSeconds[station * causes.length + cause] = causes.seconds[cause]!
  }
}
