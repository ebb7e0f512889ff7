/** Work and release at a station, held by its breakdowns and by breaks. (MODEL.md §5, §7) */
import { S_WORKING } from '../telling/states.ts'
import { needsFewStops } from '../instant/pieces.ts'
import { fail, runClocks, secondsToFailure } from './failure.ts'
import type { Recursion } from './recursion.ts'
import { addStationSeconds } from './seconds.ts'

/** The start of the next break of the station after `at`, or of the one it is in; infinite where there is none. */
function pauseFrom(recursion: Recursion, station: number, at: number): number {
  if (at < recursion.pauseAt[station]!) return recursion.pauseAt[station]!
  let next = recursion.nextBreak[station]!
  while (next < recursion.breakEnd.length && recursion.breakEnd[next]! <= at) next++
  recursion.nextBreak[station] = next
  const pause = next < recursion.breakStart.length ? recursion.breakStart[next]! : Number.POSITIVE_INFINITY
  recursion.pauseAt[station] = pause
  return pause
}

/** The first instant from `at` on at which nothing holds the station. */
export function openFrom(recursion: Recursion, station: number, at: number): number {
  let open = at
  for (;;) {
    if (recursion.downUntil[station]! > open) open = recursion.downUntil[station]!
    if (pauseFrom(recursion, station, open) > open) return open
    open = recursion.breakEnd[recursion.nextBreak[station]!]!
  }
}

/** Works (with running clocks) or releases (without) for `recursion.seconds` from `recursion.at` on, when nothing holds the station; `recursion.at` becomes the instant of its end, or, if that is past the end of the window, some instant that is. */
export function spend(recursion: Recursion, station: number, isWork: boolean): void {
  const { stationClocks } = recursion.line.stops
  const end = recursion.at[0]! + recursion.seconds[0]!
  const hasClocks = isWork && stationClocks.first[station] !== stationClocks.first[station + 1]
  if (recursion.hasOwnSeconds[station] === 0) recursion.at[0] = end
  else if (end > recursion.pauseAt[station]! || recursion.at[0]! >= recursion.pauseAt[station]!) spendHeld(recursion, station, isWork)
  else if (hasClocks && recursion.at[0]! + secondsToFailure(recursion, stationClocks, station) <= end) spendHeld(recursion, station, isWork)
  else {
    if (hasClocks) runClocks(recursion, stationClocks, station, recursion.seconds[0]!)
    addStationSeconds(recursion, station, S_WORKING, end)
    recursion.at[0] = end
  }
}

/** The same where a failure or a break may come in between. */
function spendHeld(recursion: Recursion, station: number, isWork: boolean): void {
  const { collector } = recursion.line
  const { stationClocks } = recursion.line.stops
  let at = recursion.at[0]!
  let left = recursion.seconds[0]!
  for (let stops = 0; ; stops++) {
    needsFewStops(stops, at)
    // what is left counts no more, however long it takes
    if (at > recursion.last) {
      recursion.at[0] = at + left
      return
    }
    const end = at + left
    const pause = pauseFrom(recursion, station, at)
    const failure = isWork ? at + secondsToFailure(recursion, stationClocks, station) : Number.POSITIVE_INFINITY
    if (failure <= end && failure <= pause) {
      addStationSeconds(recursion, station, S_WORKING, failure)
      runClocks(recursion, stationClocks, station, failure - at)
      left -= failure - at
      const until = fail(recursion, stationClocks, station, failure, collector.causes.stationSeconds)
      recursion.downFrom[station] = failure
      recursion.downUntil[station] = until
      recursion.calmFrom[station] = Number.POSITIVE_INFINITY
      if (left === 0) {
        recursion.at[0] = failure
        return
      }
      at = openFrom(recursion, station, failure)
      addStationSeconds(recursion, station, S_WORKING, at)
    } else if (pause < end) {
      if (isWork) runClocks(recursion, stationClocks, station, pause - at)
      left -= pause - at
      at = openFrom(recursion, station, pause)
      addStationSeconds(recursion, station, S_WORKING, at)
    } else {
      if (isWork) runClocks(recursion, stationClocks, station, left)
      addStationSeconds(recursion, station, S_WORKING, end)
      recursion.at[0] = end
      return
    }
  }
}
