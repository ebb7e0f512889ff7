/** Overtime that a plan takes, shift by shift: a mean output above the plan would say that there is none. */
import { meanOf } from '@loopwright/stats'

/**
 * Minutes beyond each shift that make up what it lacks, at the mean net rate of the line: `max(0, plan − X)/rate`.
 *
 * @param units       output of simulated shifts
 * @param plan        units wanted per shift, ≥ 0
 * @param netSeconds  of a shift, without breaks, > 0
 * @returns           minutes, one entry per shift; null where nothing is made at all
 * @see common practice, no source: the minutes are taken shift by shift and averaged afterwards
 * @example overtimeMinutes([300, 340], 320, 27_000) // => [28.125, 0]
 */
export function overtimeMinutes(units: readonly number[], plan: number, netSeconds: number): number[] | null {
  const unitsPerMinute = netRate(units, netSeconds)
  return unitsPerMinute === null ? null : units.map((made) => Math.max(0, plan - made) / unitsPerMinute)
}

/**
 * Units per net minute; null without a shift, or where nothing is made.
 *
 * @example netRate([300, 340], 27_000) // => 0.7111111111111111
 */
export function netRate(units: readonly number[], netSeconds: number): number | null {
  const rate = units.length === 0 ? 0 : meanOf(units) / (netSeconds / 60)
  return rate === 0 ? null : rate
}
