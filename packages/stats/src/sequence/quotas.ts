import { notACount } from '../messages.ts'
import { wholeShares } from './wholeShares.ts'

/**
 * How many of n units each variant gets, by the divisor rule of the odd numbers: n times to the largest wᵢ/(2xᵢ + 1); ties to the one listed first.
 *
 * @param n  whole number from 0
 * @throws StatisticsError E_TOO_FEW, E_DOMAIN, E_TOO_LARGE
 * @see Balinski & Young, Fair Representation (1982), from memory: Webster's rule
 * @example quotas([52, 31, 17], 20) // => [11, 6, 3]
 */
export function quotas(weights: readonly number[], n: number): number[] {
  if (!(Number.isInteger(n) && n >= 0)) throw notACount('The number of units', n, 0)
  const shares = wholeShares(weights)
  const given = shares.map(() => 0)
  for (let unit = 0; unit < n; unit++) {
    let best = 0
    // compared by cross products, in whole numbers
    for (let i = 1; i < shares.length; i++) {
      if (shares[i]! * (2 * given[best]! + 1) > shares[best]! * (2 * given[i]! + 1)) best = i
    }
    given[best]!++
  }
  return given
}
