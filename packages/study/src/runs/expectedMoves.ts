import type { LineSpec } from '@loopwright/line'
import type { Law } from '@loopwright/line/bounds'

/**
 * Moves from zone to zone that one run takes, about; at most, but for chance: the law without its space-limited term, and no stop.
 *
 * @param law       of the line; null: it has none
 * @param carriers  count, ≥ 1
 * @returns         infinite where the line has no law: nothing is known then
 */
export function expectedMoves(spec: LineSpec, law: Law | null, carriers: number): number {
  if (law === null) return Number.POSITIVE_INFINITY
  const lapsPerSecond = carriers / law.lapSeconds
  const rounds = law.exchangeSeconds > 0 ? Math.min(lapsPerSecond, 1 / law.exchangeSeconds) : lapsPerSecond
  return rounds * spec.zones.length * spec.window.endSeconds
}
