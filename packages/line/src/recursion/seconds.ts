/** Telling time: a station's seconds by state, in order, from where they stand up to an instant; what a stop or a break covers is told as such. */
import { S_BLOCKED, S_BREAK, S_STOPPED } from '../telling/states.ts'
import { BLOCKED_SINCE, CARRIER_WIDTH, LONGEST_BLOCK, STATION_WIDTH, ZONE_WIDTH } from '../telling/collect.ts'
import { NONE } from '../state/lists.ts'
import type { Recursion } from './recursion.ts'
import { within } from './windowed.ts'

/** The zone's time from `from` to `to`, as far as it lies in the window. */
export function addZoneSeconds(recursion: Recursion, zone: number, state: number, from: number, to: number): void {
  recursion.line.collector.zoneSeconds[zone * ZONE_WIDTH + state]! += within(recursion, from, to)
}

/** A carrier's time at rest, where it does not move; what is never told is the time it moves. */
export function addCarrierSeconds(recursion: Recursion, carrier: number, state: number, from: number, to: number): void {
  recursion.line.collector.carrierSeconds[carrier * CARRIER_WIDTH + state]! += within(recursion, from, to)
}

/** The station in the zone, if there is one whose time is told. */
export function addStationSecondsIn(recursion: Recursion, zone: number, state: number, until: number): void {
  const station = recursion.line.work.zoneStation[zone]!
  if (station !== NONE && recursion.hasOwnSeconds[station] === 1) addStationSeconds(recursion, station, state, until)
}

/** The station's time up to `until`, or to the end of the window. */
export function addStationSeconds(recursion: Recursion, station: number, state: number, until: number): void {
  const from = recursion.stationUntil[station]!
  if (until <= from) return
  if (from < recursion.calmFrom[station]! || until > recursion.calmUntil[station]!) {
    recursion.at[0] = until
    addCoveredSeconds(recursion, station, state)
    return
  }
  recursion.stationUntil[station] = until
  recursion.line.collector.stationSeconds[station * STATION_WIDTH + state]! += until - from
  if (state === S_BLOCKED) addBlock(recursion, station, from, until)
}

/** A block that begins where the last one ended is one block: in between nothing took time. */
function addBlock(recursion: Recursion, station: number, from: number, to: number): void {
  const { stationSeconds } = recursion.line.collector
  const base = station * STATION_WIDTH
  if (recursion.blockedTo[station] !== from) stationSeconds[base + BLOCKED_SINCE] = from
  recursion.blockedTo[station] = to
  const seconds = to - stationSeconds[base + BLOCKED_SINCE]!
  if (seconds > stationSeconds[base + LONGEST_BLOCK]!) stationSeconds[base + LONGEST_BLOCK] = seconds
}

/** The station's time up to `recursion.at`, where a stop or a break may cover some of it. */
function addCoveredSeconds(recursion: Recursion, station: number, state: number): void {
  const { collector } = recursion.line
  const base = station * STATION_WIDTH
  const breaks = recursion.line.stops.stationBreaks[station] === 1 ? recursion.breakStart.length : 0
  const downFrom = recursion.downFrom[station]!
  const downUntil = recursion.downUntil[station]!
  const end = Math.min(recursion.at[0]!, recursion.last)
  let at = recursion.stationUntil[station]!
  let next = recursion.nextBreakAdded[station]!
  while (at < end) {
    while (next < breaks && recursion.breakEnd[next]! <= at) next++
    let to = end
    let is = state
    if (next < breaks && recursion.breakStart[next]! <= at) {
      is = S_BREAK
      if (recursion.breakEnd[next]! < to) to = recursion.breakEnd[next]!
    } else {
      if (next < breaks && recursion.breakStart[next]! < to) to = recursion.breakStart[next]!
      if (downFrom <= at && at < downUntil) {
        is = S_STOPPED
        if (downUntil < to) to = downUntil
      } else if (downFrom > at && downFrom < to && downUntil > downFrom) to = downFrom
    }
    collector.stationSeconds[base + is]! += to - at
    if (is === S_BLOCKED) addBlock(recursion, station, at, to)
    at = to
  }
  recursion.stationUntil[station] = at
  recursion.nextBreakAdded[station] = next
  while (next < breaks && recursion.breakEnd[next]! <= at) next++
  recursion.calmFrom[station] = Math.max(recursion.warmup, downUntil)
  recursion.calmUntil[station] = next < breaks ? Math.min(recursion.breakStart[next]!, recursion.last) : recursion.last
}
