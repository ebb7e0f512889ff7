/** Work and release at a station, held by its breakdowns and by breaks. (MODEL.md §5, §7) */
import { STATION_STATES } from '../result.ts'
import { fail, runClocks, secondsToFailure } from './failure.ts'
import type { Sweep } from './sweep.ts'
import { tellStation } from './told.ts'

const WORKING = STATION_STATES.indexOf('working')

/** The next break of the station after `at`, or the one it is in: its place in the list; the number of breaks where there is none. */
function breakAt(sweep: Sweep, station: number, at: number): number {
  if (sweep.line.stationBreaks[station] === 0) return sweep.breakStart.length
  let next = sweep.nextBreak[station]!
  while (next < sweep.breakEnd.length && sweep.breakEnd[next]! <= at) next++
  sweep.nextBreak[station] = next
  return next
}

/** The first instant from `at` on at which nothing holds the station. */
export function openFrom(sweep: Sweep, station: number, at: number): number {
  let open = at
  for (;;) {
    if (sweep.downUntil[station]! > open) open = sweep.downUntil[station]!
    const next = breakAt(sweep, station, open)
    if (next >= sweep.breakStart.length || sweep.breakStart[next]! > open) return open
    open = sweep.breakEnd[next]!
  }
}

/**
 * Works (with running clocks) or releases (without) from `start`, when nothing holds the station.
 *
 * @returns the instant of its end
 */
export function spend(sweep: Sweep, station: number, start: number, seconds: number, isWork: boolean): number {
  const { stationClocks, collector } = sweep.line
  let at = start
  let left = seconds
  for (;;) {
    const end = at + left
    const next = breakAt(sweep, station, at)
    const pause = next < sweep.breakStart.length ? sweep.breakStart[next]! : Number.POSITIVE_INFINITY
    const failure = isWork ? at + secondsToFailure(sweep, stationClocks, station) : Number.POSITIVE_INFINITY
    if (failure <= end && failure <= pause) {
      tellStation(sweep, station, WORKING, failure)
      runClocks(sweep, stationClocks, station, failure - at)
      left -= failure - at
      const until = fail(sweep, stationClocks, station, failure, collector.causes.stationSeconds)
      sweep.downFrom[station] = failure
      sweep.downUntil[station] = until
      if (left === 0) return failure
      at = openFrom(sweep, station, failure)
      tellStation(sweep, station, WORKING, at)
    } else if (pause < end) {
      if (isWork) runClocks(sweep, stationClocks, station, pause - at)
      left -= pause - at
      at = openFrom(sweep, station, pause)
      tellStation(sweep, station, WORKING, at)
    } else {
      if (isWork) runClocks(sweep, stationClocks, station, left)
      tellStation(sweep, station, WORKING, end)
      return end
    }
  }
}
