/** Telling time: a station's seconds by state, in order, from where they stand up to an instant; what a stop or a break covers is told as such. */
import { S_BLOCKED, S_BREAK, S_STOPPED } from '../telling/states.ts'
import { BLOCKED_SINCE, CARRIER_WIDTH, LONGEST_BLOCK, STATION_WIDTH, ZONE_WIDTH } from '../telling/collect.ts'
import { NONE } from '../state/lists.ts'
import type { Sweep } from './sweep.ts'
import { within } from './windowed.ts'

/** The zone's time from `from` to `to`, as far as it lies in the window. */
export function tellZone(sweep: Sweep, zone: number, state: number, from: number, to: number): void {
  sweep.line.collector.zoneSeconds[zone * ZONE_WIDTH + state]! += within(sweep, from, to)
}

/** A carrier's time at rest, where it does not move; what is never told is the time it moves. */
export function tellCarrier(sweep: Sweep, carrier: number, state: number, from: number, to: number): void {
  sweep.line.collector.carrierSeconds[carrier * CARRIER_WIDTH + state]! += within(sweep, from, to)
}

/** The station in the zone, if there is one whose time is told. */
export function tellStationIn(sweep: Sweep, zone: number, state: number, until: number): void {
  const station = sweep.line.work.zoneStation[zone]!
  if (station !== NONE && sweep.isTold[station] === 1) tellStation(sweep, station, state, until)
}

/** The station's time up to `until`, or to the end of the window. */
export function tellStation(sweep: Sweep, station: number, state: number, until: number): void {
  const from = sweep.stationTold[station]!
  if (until <= from) return
  if (from < sweep.calmFrom[station]! || until > sweep.calmUntil[station]!) {
    sweep.at[0] = until
    tellCovered(sweep, station, state)
    return
  }
  sweep.stationTold[station] = until
  sweep.line.collector.stationSeconds[station * STATION_WIDTH + state]! += until - from
  if (state === S_BLOCKED) tellBlock(sweep, station, from, until)
}

/** A block that begins where the last one ended is one block: in between nothing took time. */
function tellBlock(sweep: Sweep, station: number, from: number, to: number): void {
  const { stationSeconds } = sweep.line.collector
  const base = station * STATION_WIDTH
  if (sweep.blockedTo[station] !== from) stationSeconds[base + BLOCKED_SINCE] = from
  sweep.blockedTo[station] = to
  const seconds = to - stationSeconds[base + BLOCKED_SINCE]!
  if (seconds > stationSeconds[base + LONGEST_BLOCK]!) stationSeconds[base + LONGEST_BLOCK] = seconds
}

/** The station's time up to `sweep.at`, where a stop or a break may cover some of it. */
function tellCovered(sweep: Sweep, station: number, state: number): void {
  const { collector } = sweep.line
  const base = station * STATION_WIDTH
  const breaks = sweep.line.stops.stationBreaks[station] === 1 ? sweep.breakStart.length : 0
  const downFrom = sweep.downFrom[station]!
  const downUntil = sweep.downUntil[station]!
  const end = Math.min(sweep.at[0]!, sweep.last)
  let at = sweep.stationTold[station]!
  let next = sweep.nextBreakTold[station]!
  while (at < end) {
    while (next < breaks && sweep.breakEnd[next]! <= at) next++
    let to = end
    let is = state
    if (next < breaks && sweep.breakStart[next]! <= at) {
      is = S_BREAK
      if (sweep.breakEnd[next]! < to) to = sweep.breakEnd[next]!
    } else {
      if (next < breaks && sweep.breakStart[next]! < to) to = sweep.breakStart[next]!
      if (downFrom <= at && at < downUntil) {
        is = S_STOPPED
        if (downUntil < to) to = downUntil
      } else if (downFrom > at && downFrom < to && downUntil > downFrom) to = downFrom
    }
    collector.stationSeconds[base + is]! += to - at
    if (is === S_BLOCKED) tellBlock(sweep, station, at, to)
    at = to
  }
  sweep.stationTold[station] = at
  sweep.nextBreakTold[station] = next
  while (next < breaks && sweep.breakEnd[next]! <= at) next++
  sweep.calmFrom[station] = Math.max(sweep.warmup, downUntil)
  sweep.calmUntil[station] = next < breaks ? Math.min(sweep.breakStart[next]!, sweep.last) : sweep.last
}
