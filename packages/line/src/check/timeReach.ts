import { type Distribution, distributionMean, distributionVariance } from '@loopwright/stats'
import type { Sentence } from './sentence.ts'
import { sentences as say } from './sentences.ts'

/** Seconds, about 136 years; longer times are not computed with: on the clock grid they would lose their fractions. (MODEL.md §1) */
export const REACH_SECONDS = 2 ** 32

/**
 * What is wrong with times that are too long to compute with; null: nothing is.
 *
 * @param times  one that can be drawn from
 * @example timeReach({ kind: 'constant', value: 5 }) // => null
 */
export function timeReach(times: Distribution): Sentence | null {
  const mean = distributionMean(times)
  if (!(mean <= REACH_SECONDS)) return say.timesBeyondReach(Number.isFinite(mean) ? `${Number(mean.toPrecision(3))} s` : null)
  return Number.isFinite(distributionVariance(times)) ? null : say.spreadBeyondReach()
}
