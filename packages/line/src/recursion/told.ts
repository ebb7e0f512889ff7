/** Telling time: each part's seconds by state, in order, from where they stand up to an instant; what a stop or a break covers is told as such. */
import { CARRIER_WIDTH, STATION_WIDTH, ZONE_WIDTH } from '../collect.ts'
import { STATION_STATES } from '../result.ts'
import { NONE } from '../state.ts'
import type { Sweep } from './sweep.ts'
import { within } from './windowed.ts'

const BLOCKED = STATION_STATES.indexOf('blocked')
const STOPPED = STATION_STATES.indexOf('stopped')
const BREAK = STATION_STATES.indexOf('break')

export function tellZone(sweep: Sweep, zone: number, state: number, until: number): void {
  const from = sweep.zoneTold[zone]!
  if (until <= from) return
  sweep.zoneTold[zone] = until
  sweep.line.collector.zoneSeconds[zone * ZONE_WIDTH + state]! += within(sweep, from, until)
}

export function tellCarrier(sweep: Sweep, carrier: number, state: number, until: number): void {
  const from = sweep.carrierTold[carrier]!
  if (until <= from) return
  sweep.carrierTold[carrier] = until
  sweep.line.collector.carrierSeconds[carrier * CARRIER_WIDTH + state]! += within(sweep, from, until)
}

/** The station in the zone, if there is one. */
export function tellStationIn(sweep: Sweep, zone: number, state: number, until: number): void {
  const station = sweep.line.zoneStation[zone]!
  if (station !== NONE) tellStation(sweep, station, state, until)
}

export function tellStation(sweep: Sweep, station: number, state: number, until: number): void {
  const from = sweep.stationTold[station]!
  if (until <= from) return
  sweep.stationTold[station] = until
  const { collector } = sweep.line
  const base = station * STATION_WIDTH
  const breaks = sweep.line.stationBreaks[station] === 1 ? sweep.breakStart.length : 0
  const downFrom = sweep.downFrom[station]!
  const downUntil = sweep.downUntil[station]!
  const end = Math.min(until, sweep.last)
  let at = Math.max(from, sweep.warmup)
  while (at < end) {
    let next = sweep.nextBreakTold[station]!
    while (next < breaks && sweep.breakEnd[next]! <= at) next++
    sweep.nextBreakTold[station] = next
    let to = end
    let is = state
    if (next < breaks && sweep.breakStart[next]! <= at) {
      is = BREAK
      if (sweep.breakEnd[next]! < to) to = sweep.breakEnd[next]!
    } else {
      if (next < breaks && sweep.breakStart[next]! < to) to = sweep.breakStart[next]!
      if (downFrom <= at && at < downUntil) {
        is = STOPPED
        if (downUntil < to) to = downUntil
      } else if (downFrom > at && downFrom < to && downUntil > downFrom) to = downFrom
    }
    collector.stationSeconds[base + is]! += to - at
    if (is === BLOCKED) {
      // a block that begins where the last one ended is one block: in between nothing took time
      if (sweep.blockedTo[station] !== at) collector.blockedSince[station] = at
      sweep.blockedTo[station] = to
      const seconds = to - collector.blockedSince[station]!
      if (seconds > collector.longestBlock[station]!) collector.longestBlock[station] = seconds
    }
    at = to
  }
}
