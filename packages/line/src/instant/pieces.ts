/** Work in pieces, so that whoever asked for it has a turn in between; and work that would never end. */
import type { Line } from '../state/line.ts'

/** Work that gives way after every piece; in the end, what came of it. */
export type Pieces<T> = Generator<undefined, T, undefined>

/** All pieces, one after the other. */
export function inOne<T>(pieces: Pieces<T>): T {
  for (;;) {
    const piece = pieces.next()
    if (piece.done === true) return piece.value
  }
}

/** As many things as no line does at one instant. */
export const ENDLESS = 1_000_000

/** As many stops as no piece of work meets: the recursion works it out in one go, in which nobody has a turn. */
const STOPS_MAX = 10_000_000

/** @throws RangeError  if one piece of work, or change of a transfer, has been stopped so often */
export function needsFewStops(stops: number, seconds: number): void {
  if (stops <= STOPS_MAX) return
  throw new RangeError(
    `by ${seconds} s one piece of work has been stopped ${STOPS_MAX.toLocaleString('en')} times; give its stop a longer time, or take --engine events`,
  )
}

/** @throws RangeError  always */
export function failEndless(seconds: number): never {
  throw new RangeError(
    `at ${seconds} s the line does ${ENDLESS.toLocaleString('en')} things and the clock does not go on: some stop, supply or work takes no time, or less than the clock can tell (2⁻²⁰ s); give it a time`,
  )
}

/** Whether the clock has gone on, asked now and then. */
export class Progress {
  private since = Number.NaN
  private pieces = 0

  /** @throws RangeError  if the line is still at the instant of `most` pieces ago */
  ask(line: Line, most: number): void {
    if (line.now !== this.since) {
      this.since = line.now
      this.pieces = 0
    } else if (++this.pieces >= most) failEndless(line.now)
  }
}
