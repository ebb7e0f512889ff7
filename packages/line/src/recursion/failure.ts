/** Breakdowns on operating time, where only one part is concerned: which source fails next, and for how long. (MODEL.md §7) */
import { drawInOrder } from '../work/draw.ts'
import type { PartList } from '../state/lists.ts'
import type { Recursion } from './recursion.ts'
import { counts, within } from './windowed.ts'

/** Operating seconds to the next failure of the part; infinite where it has no source. */
export function secondsToFailure(recursion: Recursion, clocks: PartList, part: number): number {
  let least = Number.POSITIVE_INFINITY
  for (let k = clocks.first[part]!; k < clocks.first[part + 1]!; k++) {
    const left = recursion.line.stops.sourceLeft[clocks.items[k]!]!
    if (left < least) least = left
  }
  return least
}

/** Runs the clocks of the part. */
export function runClocks(recursion: Recursion, clocks: PartList, part: number, seconds: number): void {
  for (let k = clocks.first[part]!; k < clocks.first[part + 1]!; k++) recursion.line.stops.sourceLeft[clocks.items[k]!]! -= seconds
}

/** Lets every source whose clock has run out fail at `at`; returns the end of the last repair. */
export function fail(recursion: Recursion, clocks: PartList, part: number, at: number, into: Float64Array): number {
  const { line } = recursion
  const { causes } = line.collector
  let until = at
  for (let k = clocks.first[part]!; k < clocks.first[part + 1]!; k++) {
    const source = clocks.items[k]!
    if (line.stops.sourceLeft[source] !== 0) continue
    drawInOrder(line, line.failures.sourceRepair[source]!, line.failures.repairStream[source]!)
    const end = at + line.draws.drawn[0]!
    if (counts(recursion, at)) causes.count[source]!++
    causes.seconds[source]! += within(recursion, at, end)
    into[part * causes.length + source]! += within(recursion, at, end)
    if (at <= recursion.last) line.events++
    if (end <= recursion.last) line.events++
    if (end > until) until = end
    drawInOrder(line, line.failures.sourceFailure[source]!, line.failures.failureStream[source]!)
    line.stops.sourceLeft[source] = line.draws.drawn[0]!
  }
  return until
}
