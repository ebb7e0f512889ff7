/**
 * The recursion: one closed loop without an event queue. (MODEL.md §12)
 *
 * A carrier leaves a zone when it is done there and the zones ahead have been left and cleared: so each carrier can be taken as far as the one ahead has been
 * taken, front to back, round and round. Stops that only lengthen one stay (breakdowns of stations and transfers on operating time, breaks with the conveyor
 * running) are worked out on the way. `canRecur` says which lines this holds for; results are those of the event engine, to the last bit.
 */
import { CARRIER_WIDTH } from '../collect.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from '../result.ts'
import { type Line, NONE } from '../state.ts'
import { advance } from './advance.ts'
import { waiting } from './stay.ts'
import { LOOKS, type Sweep } from './sweep.ts'
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

/** Tells what is left up to the end of the window. */
function finish(sweep: Sweep): void {
  const { line, last } = sweep
  const { collector } = line
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    const zone = line.carrierZone[carrier]!
    const ready = sweep.readyAt[carrier]!
    if (sweep.mode[carrier] === LOOKS) {
      if (ready > sweep.lookAt[carrier]! && ready <= last) line.events++
      tellZone(sweep, zone, Z_CLAIMED, ready)
      tellStationIn(sweep, zone, S_EXCHANGING, ready)
    }
    tellCarrier(sweep, carrier, waiting(sweep, carrier), ready, last)
    tellZone(sweep, zone, Z_BLOCKED, last)
    tellStationIn(sweep, zone, S_BLOCKED, last)
    collector.occupiedSeconds[zone]! += within(sweep, sweep.occupiedSince[zone]!, last)
    if (line.carrierSerial[carrier] !== NONE) collector.products[0]! += within(sweep, line.carrierLoaded[carrier]!, last)
    tellMoving(sweep, carrier)
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

/** A carrier moves whenever it does not stand. */
function tellMoving(sweep: Sweep, carrier: number): void {
  const { carrierSeconds } = sweep.line.collector
  let seconds = sweep.last - sweep.warmup
  for (let state = 0; state < CARRIER_WIDTH; state++) if (state !== C_MOVING) seconds -= carrierSeconds[carrier * CARRIER_WIDTH + state]!
  carrierSeconds[carrier * CARRIER_WIDTH + C_MOVING] = seconds
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
