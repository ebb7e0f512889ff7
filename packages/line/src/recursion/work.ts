/** Work and release at a station, held by its breakdowns and by breaks. (MODEL.md §5, §7) */
import { S_WORKING } from '../telling/states.ts'
import { fail, runClocks, secondsToFailure } from './failure.ts'
import type { Sweep } from './sweep.ts'
import { tellStation } from './told.ts'

/** The start of the next break of the station after `at`, or of the one it is in; infinite where there is none. */
function pauseFrom(sweep: Sweep, station: number, at: number): number {
  if (at < sweep.pauseAt[station]!) return sweep.pauseAt[station]!
  let next = sweep.nextBreak[station]!
  while (next < sweep.breakEnd.length && sweep.breakEnd[next]! <= at) next++
  sweep.nextBreak[station] = next
  const pause = next < sweep.breakStart.length ? sweep.breakStart[next]! : Number.POSITIVE_INFINITY
  sweep.pauseAt[station] = pause
  return pause
}

/** The first instant from `at` on at which nothing holds the station. */
export function openFrom(sweep: Sweep, station: number, at: number): number {
  let open = at
  for (;;) {
    if (sweep.downUntil[station]! > open) open = sweep.downUntil[station]!
    if (pauseFrom(sweep, station, open) > open) return open
    open = sweep.breakEnd[sweep.nextBreak[station]!]!
  }
}

/** Works (with running clocks) or releases (without) for `sweep.seconds` from `sweep.at` on, when nothing holds the station; `sweep.at` becomes the instant of its end. */
export function spend(sweep: Sweep, station: number, isWork: boolean): void {
  const { stationClocks } = sweep.line.stops
  const end = sweep.at[0]! + sweep.seconds[0]!
  const hasClocks = isWork && stationClocks.first[station] !== stationClocks.first[station + 1]
  if (sweep.isTold[station] === 0) sweep.at[0] = end
  else if (end > sweep.pauseAt[station]! || sweep.at[0]! >= sweep.pauseAt[station]!) spendHeld(sweep, station, isWork)
  else if (hasClocks && sweep.at[0]! + secondsToFailure(sweep, stationClocks, station) <= end) spendHeld(sweep, station, isWork)
  else {
    if (hasClocks) runClocks(sweep, stationClocks, station, sweep.seconds[0]!)
    tellStation(sweep, station, S_WORKING, end)
    sweep.at[0] = end
  }
}

/** The same where a failure or a break may come in between. */
function spendHeld(sweep: Sweep, station: number, isWork: boolean): void {
  const { collector } = sweep.line
  const { stationClocks } = sweep.line.stops
  let at = sweep.at[0]!
  let left = sweep.seconds[0]!
  for (;;) {
    const end = at + left
    const pause = pauseFrom(sweep, station, at)
    const failure = isWork ? at + secondsToFailure(sweep, stationClocks, station) : Number.POSITIVE_INFINITY
    if (failure <= end && failure <= pause) {
      tellStation(sweep, station, S_WORKING, failure)
      runClocks(sweep, stationClocks, station, failure - at)
      left -= failure - at
      const until = fail(sweep, stationClocks, station, failure, collector.causes.stationSeconds)
      sweep.downFrom[station] = failure
      sweep.downUntil[station] = until
      sweep.calmFrom[station] = Number.POSITIVE_INFINITY
      if (left === 0) {
        sweep.at[0] = failure
        return
      }
      at = openFrom(sweep, station, failure)
      tellStation(sweep, station, S_WORKING, at)
    } else if (pause < end) {
      if (isWork) runClocks(sweep, stationClocks, station, pause - at)
      left -= pause - at
      at = openFrom(sweep, station, pause)
      tellStation(sweep, station, S_WORKING, at)
    } else {
      if (isWork) runClocks(sweep, stationClocks, station, left)
      tellStation(sweep, station, S_WORKING, end)
      sweep.at[0] = end
      return
    }
  }
}
