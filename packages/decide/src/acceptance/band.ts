/** The band of a trial: what a line that meets its forecast makes in so many of so many trials. */
import { StatisticsError } from '@loopwright/stats'

/** Units of a trial that a line which meets its forecast makes. */
export interface TrialBand {
  readonly low: number
  readonly high: number
  /** asked for, such as 0.9 */
  readonly share: number
  /** chance that a further trial lies within, ends included: at least this, for trials that are all different */
  readonly covers: number
  readonly n: number
}

/**
 * Band from simulated trials: between two of them in order, so that a further trial lies within with the chance asked for, whatever their shape.
 *
 * @param units  of simulated trials of the length in question
 * @param share  above 0 and below 1
 * @throws StatisticsError E_TOO_FEW  if there are too few trials for that chance
 * @see Hahn & Meeker, Statistical Intervals (1991): a further observation lies between the l-th and the u-th of n with chance (u − l)/(n + 1)
 * @example trialBand([...Array(19).keys()], 0.9) // => { low: 0, high: 18, share: 0.9, covers: 0.9, n: 19 }
 */
export function trialBand(units: readonly number[], share: number): TrialBand {
  const n = units.length
  const needed = Math.ceil(share * (n + 1) - 1e-9)
  if (needed > n - 1) {
    const least = Math.ceil((1 + share) / (1 - share) - 1e-9)
    throw new StatisticsError('E_TOO_FEW', `A band for ${share} of the trials takes at least ${least} simulated trials; there are ${n}.`)
  }
  const sorted = [...units].sort((a, b) => a - b)
  const left = n - 1 - needed
  const low = Math.floor(left / 2)
  return { low: sorted[low]!, high: sorted[low + needed]!, share, covers: needed / (n + 1), n }
}
