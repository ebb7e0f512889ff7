/** A transfer's change of position, held by its breakdowns. (MODEL.md §4, §7) */
import { Z_OTHER, Z_STOPPED } from '../telling/states.ts'
import { needsFewStops } from '../instant/pieces.ts'
import { fail, runClocks, secondsToFailure } from './failure.ts'
import type { Recursion } from './recursion.ts'
import { addZoneSeconds } from './seconds.ts'
import { within } from './windowed.ts'

/**
 * Changes for `recursion.seconds` from `recursion.at` on and keeps the holds met in `recursion.holds`; tells the zone's time as `state`, or as stopped.
 * `recursion.at` becomes the instant at which the transfer stands in its new position.
 */
export function change(recursion: Recursion, zone: number, state: number): void {
  const { collector } = recursion.line
  const { transferClocks } = recursion.line.stops
  let at = recursion.at[0]!
  let left = recursion.seconds[0]!
  recursion.holds = 0
  for (let stops = 0; ; stops++) {
    needsFewStops(stops, at)
    const end = at + left
    // what is left counts no more, however long it takes
    if (at > recursion.last) {
      recursion.at[0] = end
      return
    }
    const failure = at + secondsToFailure(recursion, transferClocks, zone)
    if (failure > end) {
      runClocks(recursion, transferClocks, zone, left)
      addZoneSeconds(recursion, zone, state, at, end)
      if (end <= recursion.last) recursion.line.events++
      recursion.at[0] = end
      return
    }
    addZoneSeconds(recursion, zone, state, at, failure)
    runClocks(recursion, transferClocks, zone, failure - at)
    left -= failure - at
    const until = fail(recursion, transferClocks, zone, failure, collector.causes.zoneSeconds)
    addZoneSeconds(recursion, zone, Z_STOPPED, failure, until)
    if (state === Z_OTHER) recursion.heldSeconds[zone]! += within(recursion, failure, until)
    keepHold(recursion, failure, until)
    if (left === 0) {
      recursion.heldUntil[zone] = until
      if (end <= recursion.last) recursion.line.events++
      recursion.at[0] = failure
      return
    }
    at = until
  }
}

function keepHold(recursion: Recursion, from: number, to: number): void {
  if (recursion.holds === recursion.holdFrom.length) {
    const widen = (list: Float64Array): Float64Array => {
      const wider = new Float64Array(2 * list.length)
      wider.set(list)
      return wider
    }
    recursion.holdFrom = widen(recursion.holdFrom)
    recursion.holdTo = widen(recursion.holdTo)
  }
  recursion.holdFrom[recursion.holds] = from
  recursion.holdTo[recursion.holds++] = to
}

/** When something of `recursion.seconds` ends that starts at `recursion.at`, which becomes that instant, and stands still in the holds kept; what ends as a hold begins does end. */
export function holdBack(recursion: Recursion): void {
  const start = recursion.at[0]!
  let end = start + recursion.seconds[0]!
  for (let k = 0; k < recursion.holds; k++) {
    const from = recursion.holdFrom[k]!
    if (from >= end) break
    if (recursion.holdTo[k]! > start) end += recursion.holdTo[k]! - Math.max(from, start)
  }
  recursion.at[0] = end
}
