/** The answer of a carrier sweep, by its rule. */
import { pairedLowerLimit } from '@loopwright/stats'
import type { NotConfirmed, SweepAnswer, SweepCount } from './sweepResult.ts'

/** One hundredth below the best is as good as the best; 95 of 100 such claims hold. */
export const WITHIN = 0.01
export const LEVEL = 0.95
const PLAN_SHARE = 0.9
/** of a number of units; a limit that misses 0 by less lies on it */
const ROUNDING = 1e-12

/** What of a count the rule looks at. */
export type Candidate = Pick<SweepCount, 'carriers' | 'units' | 'gridlocks' | 'meetsPlan'>

/**
 * The smallest count whose mean is within 1 % of the best one's with 95 % confidence.
 *
 * From the best count downwards, each next smaller count is tested against the best, replication by replication on the same random world:
 * the lower limit of the mean of D = Y_N − 0.99·Y_best, one-sided Student t, must not be below 0. The first that fails, or that stood still in any
 * replication, ends the walk; the last one before it is the answer.
 *
 * @param counts  ascending by carriers, each tried in the same worlds
 * @returns       null while a count has fewer than 2 replications
 * @example sweepAnswer([{ carriers: 5, units: [90, 91], gridlocks: 0, meetsPlan: null }, { carriers: 6, units: [100, 101], gridlocks: 0, meetsPlan: null }])?.chosen // => 6
 */
export function sweepAnswer(counts: readonly Candidate[]): SweepAnswer | null {
  const replications = Math.min(...counts.map((count) => count.units.length))
  if (counts.length === 0 || replications < 2) return null
  const best = bestIndex(counts, replications)
  const bestUnits = counts[best]!.units
  let chosen: number | null = null
  let notConfirmed: NotConfirmed | null = null
  for (let index = best; index >= 0 && notConfirmed === null; index -= 1) {
    const { carriers, units, gridlocks } = counts[index]!
    const differences = Array.from({ length: replications }, (_, j) => units[j]! - (1 - WITHIN) * bestUnits[j]!)
    const lowerLimit = pairedLowerLimit(differences, LEVEL).low
    if (gridlocks > 0) notConfirmed = { carriers, reason: 'gridlock', shortBy: Math.max(0, -lowerLimit), lowerLimit }
    else if (lowerLimit < -ROUNDING * bestUnits[0]!) notConfirmed = { carriers, reason: 'may fall short', shortBy: -lowerLimit, lowerLimit }
    else chosen = index
  }
  return {
    within: WITHIN,
    level: LEVEL,
    best: counts[best]!.carriers,
    chosen: chosen === null ? null : counts[chosen]!.carriers,
    notConfirmed,
    meetsPlanInNineOfTen:
      counts.find((count) => count.gridlocks === 0 && count.meetsPlan !== null && count.meetsPlan.share >= PLAN_SHARE)?.carriers ?? null,
    bestAtUpperEnd: best === counts.length - 1,
    chosenAtLowerEnd: chosen === 0,
    replications,
  }
}

/** Place of the highest mean; of equals the smallest count. */
function bestIndex(counts: readonly Candidate[], replications: number): number {
  const sums = counts.map((count) => count.units.slice(0, replications).reduce((sum, units) => sum + units, 0))
  return sums.indexOf(Math.max(...sums))
}
