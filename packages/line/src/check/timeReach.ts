import { type Distribution, distributionKinds, distributionMean, distributionVariance } from '@loopwright/stats'
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
  const longest = longestOf(times)
  if (longest > REACH_SECONDS) return say.timesBeyondReach(`a time of ${secondsText(longest)} is`)
  const mean = distributionMean(times)
  if (!(mean <= REACH_SECONDS))
    return say.timesBeyondReach(Number.isFinite(mean) ? `times of ${secondsText(mean)} on average are` : 'the mean of these times is')
  return Number.isFinite(distributionVariance(times)) ? null : say.spreadBeyondReach()
}

export const secondsText = (seconds: number): string => `${Number(seconds.toPrecision(3))} s`

const FIELDS = new Map(distributionKinds().map(({ kind, fields }) => [kind, Object.entries(fields)]))

/** The longest time that a distribution is given by, or one inside it. */
function longestOf(times: Distribution): number {
  const parts = times as unknown as Readonly<Record<string, unknown>>
  return (FIELDS.get(times.kind) ?? []).reduce((longest, [name, [is]]) => {
    if (is === 'distribution') return Math.max(longest, longestOf(parts[name] as Distribution))
    if (is === 'values') return (parts[name] as readonly number[]).reduce((most, value) => Math.max(most, value), longest)
    return is === 'value' || is === 'positive' || is === 'extra' || is === 'limit' ? Math.max(longest, Number(parts[name])) : longest
  }, 0)
}
