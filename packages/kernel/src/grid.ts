/** Ticks of the clock in one second: a power of two, so that sums of durations are exact in a double. (MODEL.md §1) */
export const TICKS_PER_SECOND = 2 ** 20

/**
 * Rounds a duration to a whole multiple of 2⁻²⁰ s: floor(x·2²⁰ + ½)/2²⁰.
 *
 * @param seconds  finite, up to 2³³ in size (beyond that sums are no longer exact)
 * @returns        seconds, on the grid
 * @example toGrid(0.1) // => 0.10000038146972656
 */
export function toGrid(seconds: number): number {
  return Math.floor(seconds * TICKS_PER_SECOND + 0.5) / TICKS_PER_SECOND
}

/**
 * The same for the number at `list[at]`, in place: a number handed over a call may cost an allocation, a place in a list never does.
 *
 * @example ((list) => (toGridAt(list, 1), [...list]))(Float64Array.of(0.1, 0.1)) // => [0.1, 0.10000038146972656]
 */
export function toGridAt(list: Float64Array, at: number): void {
  list[at] = Math.floor(list[at]! * TICKS_PER_SECOND + 0.5) / TICKS_PER_SECOND
}

/**
 * Whether a duration lies on the grid.
 *
 * @example isOnGrid(0.25) // => true
 */
export function isOnGrid(seconds: number): boolean {
  return Number.isInteger(seconds * TICKS_PER_SECOND)
}
