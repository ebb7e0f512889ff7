import { emptyWindow, nothingKnownAtStart, timesNotRising } from '../messages.ts'

/** From this time on, this value. */
export interface Change {
  readonly time: number
  readonly value: number
}

/**
 * Time-weighted mean of a stepwise quantity over a window (start, end]: ∫x dt over the length.
 *
 * A change at the start itself counts as made before it. On the clock grid the sums of durations are exact.
 *
 * @param changes  in order of time, the first at or before start
 * @throws StatisticsError E_DOMAIN for a window without length, E_TOO_FEW where the value at the start is unknown
 * @example timeWeightedMean([{ time: 0, value: 4 }, { time: 30, value: 6 }], 20, 40) // => 5
 */
export function timeWeightedMean(changes: readonly Change[], start: number, end: number): number {
  if (!(end > start)) throw emptyWindow(start, end)
  if (changes.length === 0 || changes[0]!.time > start) throw nothingKnownAtStart(start)
  let area = 0
  for (let i = 0; i < changes.length; i++) {
    const { time, value } = changes[i]!
    const next = i + 1 < changes.length ? changes[i + 1]!.time : Infinity
    if (next < time) throw timesNotRising(i + 2, next)
    const from = Math.max(start, time)
    const to = Math.min(end, next)
    if (to > from) area += value * (to - from)
  }
  return area / (end - start)
}
