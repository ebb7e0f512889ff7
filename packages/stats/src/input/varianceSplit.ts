import { Tally } from '../accumulate/tally.ts'
import { tooFew, unequalLength } from '../messages.ts'
import { needSample } from '../samples.ts'

/** How much of the spread comes from not knowing the task times, and how much from shift to shift. */
export interface VarianceSplit {
  /** outer draws */
  readonly draws: number
  /** replications of each */
  readonly replications: number
  readonly grandMean: number
  /** r·variance of the means by draw */
  readonly meanSquareBetween: number
  /** mean of the variances within */
  readonly meanSquareWithin: number
  /** max(0, (between − within)/r) */
  readonly inputVariance: number
  /** between/(r·draws); never the band of a shift */
  readonly grandMeanVariance: number
  /** of input variance + within: what more time study could take away, and more runs could not; null where nothing varies */
  readonly inputShare: number | null
}

/**
 * One-way split of variance.
 *
 * @param rows  by outer draw, two or more, then by replication, two or more, all of one length
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_UNEQUAL_LENGTH
 * @see Barton, Nelson & Xie, Quantifying input uncertainty via simulation confidence intervals (2014)
 * @example varianceSplit([[412, 418], [400, 408], [421, 425]]).inputShare // => 0.8079470198675497
 */
export function varianceSplit(rows: readonly (readonly number[])[]): VarianceSplit {
  const draws = rows.length
  if (draws < 2) throw tooFew('a split of variance', draws, 'outer draw', 2)
  const replications = rows[0]!.length
  rows.forEach((row, b) => {
    if (row.length !== replications) throw unequalLength('Outer draw 1', replications, `outer draw ${b + 1}`, row.length)
    needSample('a split of variance', row, 'replication', 2)
  })
  const tallies = rows.map((row) => Tally.of(row))
  const means = Tally.of(tallies.map((tally) => tally.mean!))
  const meanSquareBetween = replications * means.variance!
  const meanSquareWithin = Tally.of(tallies.map((tally) => tally.variance!)).mean!
  const inputVariance = Math.max(0, (meanSquareBetween - meanSquareWithin) / replications)
  const all = inputVariance + meanSquareWithin
  return {
    draws,
    replications,
    grandMean: means.mean!,
    meanSquareBetween,
    meanSquareWithin,
    inputVariance,
    grandMeanVariance: meanSquareBetween / (replications * draws),
    inputShare: all === 0 ? null : inputVariance / all,
  }
}
