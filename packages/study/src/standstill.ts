/** Why a run stood still, in terms of the line: the circle of zones that wait for each other, who waits behind it, and the plain reason. */
import type { LineSpec, RunEnd } from '@loopwright/line'

export type StandstillReason =
  /** every place to stand of the circle is taken */
  | 'too many carriers'
  /** the circle runs through a zone with several ways in: what came in there keeps itself from going on */
  | 'merge fills its own exit'
  /** work, a push or a pull waits for operators who can never be free: somebody waits for himself */
  | 'nobody is free'
  /** zones wait, but not in a circle: the first of them has no way on */
  | 'no way on'

export interface Standstill {
  readonly reason: StandstillReason
  /** zone indices, each waits for the next and the last for the first; empty where there is no circle */
  readonly circle: readonly number[]
  /** zone indices that wait for the circle, or for another zone, without being part of it; rising */
  readonly behind: readonly number[]
  /** index of the merging zone; null: none is part of the reason */
  readonly merge: number | null
  /** zone indices that wait for operators */
  readonly unmanned: readonly number[]
}

/**
 * Reads the reason off the end of a run. (MODEL.md §10)
 *
 * @param end  of a run of this line that ended in gridlock
 * @returns null where the run did not end so
 */
export function standstillOf(line: Pick<LineSpec, 'paths'>, end: RunEnd): Standstill | null {
  if (end.reason !== 'gridlock') return null
  const circle = end.cycle
  const behind = end.waits.map(([zone]) => zone).filter((zone) => !circle.includes(zone))
  const waysIn = (zone: number): number => line.paths.filter(({ to }) => to === zone).length
  const merge = circle.find((zone) => waysIn(zone) > 1) ?? null
  const { unmanned } = end
  const reason =
    unmanned.length > 0
      ? 'nobody is free'
      : circle.length === 0
        ? 'no way on'
        : merge === null
          ? 'too many carriers'
          : 'merge fills its own exit'
  return { reason, circle, behind, merge, unmanned }
}
