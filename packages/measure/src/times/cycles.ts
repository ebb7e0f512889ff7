/** How many cycles to time. */
import { meanInterval } from '@loopwright/stats'
import { observationsNeeded } from '@loopwright/stats/fit'

/** Cycles for a mean known to within a share of it. */
export interface Cycles {
  /** by Student's t: m ≥ (t·s/(k·mean))² */
  readonly needed: number
  /** beyond those there are */
  readonly more: number
  /** by the formula of the handbooks of work study, at 95.45 % (z = 2) and with s of divisor n: (2·s/(k·mean))², rounded up */
  readonly handbook: number
  /** half-width of the 95 % interval of the mean now, as a share of it */
  readonly knownTo: number
}

/**
 * Cycles for ± `relative` at 95 %, by a first sample.
 *
 * @returns null below 2 values
 * @see Introduction to Work Study (International Labour Office): n = (40·√(n′Σx² − (Σx)²)/Σx)² for ± 5 % at 95.45 %, from memory
 * @example cyclesFor([7, 6, 7, 7, 6], 0.05).handbook // => 9
 */
export function cyclesFor(values: readonly number[], relative: number): Cycles | null {
  const n = values.length
  if (n < 2) return null
  const needed = observationsNeeded(values, relative)
  const { mean, halfWidth } = meanInterval(values)
  const sum = values.reduce((all, x) => all + x, 0)
  const squares = values.reduce((all, x) => all + x * x, 0)
  const handbook = Math.ceil((((2 / relative) * Math.sqrt(Math.max(0, n * squares - sum * sum))) / sum) ** 2 - 1e-9)
  return { needed, more: Math.max(0, needed - n), handbook, knownTo: halfWidth / mean }
}
