/** A transfer's change of position, held by its breakdowns. (MODEL.md §4, §7) */
import { Z_OTHER, Z_STOPPED } from '../telling/states.ts'
import { fail, runClocks, secondsToFailure } from './failure.ts'
import type { Sweep } from './sweep.ts'
import { tellZone } from './told.ts'
import { within } from './windowed.ts'

/**
 * Changes for `sweep.seconds` from `sweep.at` on and keeps the holds met in `sweep.holds`; tells the zone's time as `state`, or as stopped.
 * `sweep.at` becomes the instant at which the transfer stands in its new position.
 */
export function change(sweep: Sweep, zone: number, state: number): void {
  const { collector } = sweep.line
  const { transferClocks } = sweep.line.stops
  let at = sweep.at[0]!
  let left = sweep.seconds[0]!
  sweep.holds = 0
  for (;;) {
    const end = at + left
    const failure = at + secondsToFailure(sweep, transferClocks, zone)
    if (failure > end) {
      runClocks(sweep, transferClocks, zone, left)
      tellZone(sweep, zone, state, at, end)
      if (end <= sweep.last) sweep.line.events++
      sweep.at[0] = end
      return
    }
    tellZone(sweep, zone, state, at, failure)
    runClocks(sweep, transferClocks, zone, failure - at)
    left -= failure - at
    const until = fail(sweep, transferClocks, zone, failure, collector.causes.zoneSeconds)
    tellZone(sweep, zone, Z_STOPPED, failure, until)
    if (state === Z_OTHER) sweep.heldSeconds[zone]! += within(sweep, failure, until)
    keepHold(sweep, failure, until)
    if (left === 0) {
      sweep.heldUntil[zone] = until
      if (end <= sweep.last) sweep.line.events++
      sweep.at[0] = failure
      return
    }
    at = until
  }
}

function keepHold(sweep: Sweep, from: number, to: number): void {
  if (sweep.holds === sweep.holdFrom.length) {
    const widen = (list: Float64Array): Float64Array => {
      const wider = new Float64Array(2 * list.length)
      wider.set(list)
      return wider
    }
    sweep.holdFrom = widen(sweep.holdFrom)
    sweep.holdTo = widen(sweep.holdTo)
  }
  sweep.holdFrom[sweep.holds] = from
  sweep.holdTo[sweep.holds++] = to
}

/** When something of `sweep.seconds` ends that starts at `sweep.at`, which becomes that instant, and stands still in the holds kept; what ends as a hold begins does end. */
export function holdBack(sweep: Sweep): void {
  const start = sweep.at[0]!
  let end = start + sweep.seconds[0]!
  for (let k = 0; k < sweep.holds; k++) {
    const from = sweep.holdFrom[k]!
    if (from >= end) break
    if (sweep.holdTo[k]! > start) end += sweep.holdTo[k]! - Math.max(from, start)
  }
  sweep.at[0] = end
}
