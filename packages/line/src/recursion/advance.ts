/**
 * Takes one carrier as far as the one ahead has been taken. This is the inner loop of the recursion, in one function, with its numbers in locals and columns: what
 * a part is told of is added up in place, since every sum of times on the clock grid is exact, in whatever order it is taken.
 */
import { CARRIER_WIDTH, ZONE_WIDTH } from '../collect.ts'
import { drawInOrder } from '../draw.ts'
import { dutyApplies } from '../dutyAhead.ts'
import { SPEED } from '../motion.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from '../result.ts'
import { NONE, SAME_AS_MOVE, UNLOAD_DUTY, WORK_DUTY } from '../state.ts'
import { addToTally, VALUE } from '../tally.ts'
import { change, holdBack } from './change.ts'
import { changeOut, serve } from './stay.ts'
import { LOOKS, READY, type Sweep } from './sweep.ts'
import { tellStation } from './told.ts'

const Z_FREE = ZONE_STATES.indexOf('free')
const Z_CLAIMED = ZONE_STATES.indexOf('claimed')
const Z_BLOCKED = ZONE_STATES.indexOf('blocked')
const Z_VACATING = ZONE_STATES.indexOf('vacating')
const S_BLOCKED = STATION_STATES.indexOf('blocked')
const S_EXCHANGING = STATION_STATES.indexOf('exchanging')
const S_STARVED = STATION_STATES.indexOf('starved')
const C_WITH_PRODUCT = CARRIER_STATES.indexOf('waiting with product')
const C_EMPTY = CARRIER_STATES.indexOf('waiting empty')

/** False: the zone ahead has not been left yet, or the window is over. */
export function advance(sweep: Sweep, carrier: number): boolean {
  const { line, last, warmup, asideFor, heldUntil, freeAt, zoneTold, occupiedSince } = sweep
  const { zoneNext, zoneCarrier, exitClear, zoneStation, zoneChanges, moveSampler, clearSampler, moveSeconds, clearSeconds } = line
  const { zoneSeconds, occupiedSeconds, movesOut, carrierSeconds, lapZone } = line.collector
  let zone = line.carrierZone[carrier]!
  let looks = sweep.mode[carrier] === LOOKS
  let look = sweep.lookAt[carrier]!
  let ready = sweep.readyAt[carrier]!
  let events = 0
  let any = false
  // it counts as in its zone again when it has been taken as far as it goes
  zoneCarrier[zone] = NONE
  while ((looks ? look : ready) <= last) {
    const next = zoneNext[zone]!
    let open = Math.max(heldUntil[next]!, heldUntil[zone]!)
    const isAside = asideFor[next] === carrier
    if (!isAside) {
      let ahead = next
      while (zoneCarrier[ahead] === NONE && asideFor[ahead] === NONE) {
        open = Math.max(open, freeAt[ahead]!)
        if (exitClear[ahead] === 0) {
          ahead = NONE
          break
        }
        ahead = zoneNext[ahead]!
      }
      if (ahead !== NONE) break
    }
    const station = zoneStation[zone]!

    // when it leaves, and what its zone is told up to then
    let at = look
    const atSpeed = looks && open <= look ? 1 : 0
    if (looks) {
      const until = atSpeed === 1 ? look : ready
      const told = Math.min(Math.max(until, warmup), last)
      zoneSeconds[zone * ZONE_WIDTH + Z_CLAIMED]! += told - zoneTold[zone]!
      zoneTold[zone] = told
      if (station !== NONE) tellStation(sweep, station, S_EXCHANGING, until)
      if (atSpeed === 0) {
        looks = false
        any = true
        if (ready > look && ready <= last) events++
      }
    }
    if (atSpeed === 0) at = Math.max(open, ready)
    if (at > last) break
    any = true
    const now = Math.max(at, warmup)
    if (atSpeed === 0) {
      const state = line.carrierSerial[carrier] === NONE ? C_EMPTY : C_WITH_PRODUCT
      carrierSeconds[carrier * CARRIER_WIDTH + state]! += now - Math.max(ready, warmup)
      zoneSeconds[zone * ZONE_WIDTH + Z_BLOCKED]! += now - zoneTold[zone]!
      zoneTold[zone] = now
      if (station !== NONE) tellStation(sweep, station, S_BLOCKED, at)
    }
    occupiedSeconds[zone]! += now - occupiedSince[zone]!
    occupiedSince[next] = now

    // counts
    if (at > warmup) movesOut[zone]!++
    if (station !== NONE && line.stationServed[station] === 1) {
      line.stationServed[station] = 0
      if (at > warmup) line.collector.cycles[station]!++
    }
    if (zone === lapZone) {
      const { lap, carrierLaps } = line.collector
      const seconds = at - line.carrierLapStart[carrier]!
      line.carrierLapStart[carrier] = at
      if (at > warmup && !Number.isNaN(seconds)) {
        lap[VALUE] = seconds
        addToTally(lap)
        carrierLaps[carrier]!++
      }
    }

    // the zones ahead are its own from now on
    if (!isAside) {
      for (let ahead = next; ; ahead = zoneNext[ahead]!) {
        if (now > zoneTold[ahead]!) {
          zoneSeconds[ahead * ZONE_WIDTH + Z_FREE]! += now - zoneTold[ahead]!
          zoneTold[ahead] = now
        }
        const stationAhead = zoneStation[ahead]!
        if (stationAhead !== NONE) tellStation(sweep, stationAhead, S_STARVED, at)
        if (exitClear[ahead] === 0) break
        asideFor[zoneNext[ahead]!] = carrier
      }
    }
    asideFor[next] = NONE

    // the move, and the clear behind it
    const given = moveSampler[zone]!
    const times = 4 * zone + 2 * atSpeed
    let seconds = moveSeconds[times]!
    if (given !== NONE) {
      drawInOrder(line, given, line.moveStream[zone]!)
      seconds = line.drawn[0]!
    }
    const givenClear = clearSampler[zone]!
    let clear = at
    if (givenClear === NONE) clear += clearSeconds[2 * zone + atSpeed]!
    else if (givenClear === SAME_AS_MOVE) clear += seconds
    else {
      drawInOrder(line, givenClear, line.clearStream[zone]!)
      clear += line.drawn[0]!
    }
    if (clear <= last) events++
    sweep.holds = 0
    if (zoneChanges[zone] === 1) {
      sweep.at[0] = clear
      sweep.seconds[0] = line.changeSeconds[2 * zone + line.backPosition[zone]!]!
      change(sweep, zone, Z_VACATING)
      clear = sweep.at[0]!
    } else {
      const told = Math.min(Math.max(clear, warmup), last)
      zoneSeconds[zone * ZONE_WIDTH + Z_VACATING]! += told - now
      zoneTold[zone] = told
    }
    freeAt[zone] = clear
    if (station !== NONE) tellStation(sweep, station, S_EXCHANGING, clear)

    // the arrival: a look, or a stay
    zone = next
    const stationHere = zoneStation[zone]!
    let duty = UNLOAD_DUTY
    if (stationHere === NONE) duty = WORK_DUTY + 1
    else while (duty <= WORK_DUTY && !dutyApplies(line, stationHere, duty, carrier)) duty++
    const changes = zoneChanges[zone] === 1
    if (given === NONE && duty > WORK_DUTY && !changes) {
      const toSpeed = moveSeconds[times + SPEED]!
      looks = true
      look = at + toSpeed
      ready = at + seconds
      if (sweep.holds > 0) {
        sweep.at[0] = at
        sweep.seconds[0] = toSpeed
        holdBack(sweep)
        look = sweep.at[0]!
        sweep.seconds[0] = seconds - toSpeed
        holdBack(sweep)
        ready = sweep.at[0]!
      }
      if (look <= last) events++
      continue
    }
    looks = false
    ready = at + seconds
    if (sweep.holds > 0) {
      sweep.at[0] = at
      sweep.seconds[0] = seconds
      holdBack(sweep)
      ready = sweep.at[0]!
    }
    if (ready <= last) events++
    const told = Math.min(Math.max(ready, warmup), last)
    zoneSeconds[zone * ZONE_WIDTH + Z_CLAIMED]! += told - zoneTold[zone]!
    zoneTold[zone] = told
    if (stationHere !== NONE) {
      tellStation(sweep, stationHere, S_EXCHANGING, ready)
      if (duty > WORK_DUTY) line.stationServed[stationHere] = 0
    }
    if (duty <= WORK_DUTY || changes) {
      sweep.at[0] = ready
      if (duty <= WORK_DUTY) serve(sweep, carrier, zone, stationHere, duty)
      if (changes) changeOut(sweep, carrier, zone)
      ready = sweep.at[0]!
    }
  }
  zoneCarrier[zone] = carrier
  line.carrierZone[carrier] = zone
  sweep.mode[carrier] = looks ? LOOKS : READY
  sweep.lookAt[carrier] = look
  sweep.readyAt[carrier] = ready
  line.events += events
  return any
}
