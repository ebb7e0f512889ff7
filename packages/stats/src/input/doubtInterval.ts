/** Where a mean output lies when its inputs were measured: the doubt of each input and the chance of the runs in one interval. */
import { Tally } from '../accumulate/tally.ts'
import { needLevel, needSample } from '../samples.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { tQuantile } from '../special/tQuantile.ts'
import type { VarianceSplit } from './varianceSplit.ts'

/** What an input adds to the variance of the mean output. */
export interface InputPart {
  /** of the mean output; ≥ 0 */
  readonly variance: number
  /** degrees of freedom by which the spread of the input itself is known; null: as good as known */
  readonly freedom: number | null
}

/** An interval of a mean output. */
export interface DoubtInterval {
  readonly mean: number
  readonly level: number
  readonly halfWidth: number
  readonly low: number
  readonly high: number
  /** of Student's t; null: the normal's, or nothing varies */
  readonly freedom: number | null
}

/** least degrees of freedom of a redrawing by t that has a variance worth speaking of */
const FREEDOM_MIN = 3

/**
 * The variance that redrawn inputs add, parted among them. What was redrawn by Student's t of ν degrees of freedom spreads by ν/(ν − 2) more than its mean does: that is taken off.
 *
 * @param split   of what redrawing changed, in the same worlds
 * @param inputs  variance: by straight lines, only their shares count; freedom: of the t that each was redrawn by, null where by none
 * @returns       variances that add up to the doubt of the mean output; the doubt that no input has by straight lines is shared out among them
 * @example inputParts({ inputVariance: 10 }, [{ variance: 3, freedom: 12 }, { variance: 1, freedom: null }]).map(({ variance }) => variance) // => [6.25, 2.5]
 */
export function inputParts({ inputVariance }: Pick<VarianceSplit, 'inputVariance'>, inputs: readonly InputPart[]): InputPart[] {
  const sum = inputs.reduce((all, { variance }) => all + variance, 0)
  return inputs.map(({ variance, freedom }) => {
    const share = sum > 0 ? variance / sum : 1 / inputs.length
    const wider = freedom === null ? 1 : Math.max(freedom, FREEDOM_MIN) / (Math.max(freedom, FREEDOM_MIN) - 2)
    return { variance: (inputVariance * share) / wider, freedom }
  })
}

/**
 * Mean ± t·√(doubt of the inputs + chance of the runs). The degrees of freedom are those of Welch and Satterthwaite: of each input, of the redrawn lines, of the runs.
 *
 * @param runs   output by run, inputs as measured; two or more
 * @param parts  what each input adds
 * @param split  of what redrawing changed: how well the doubt itself is known; null: exactly
 * @param level  above 0 and below 1
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_DOMAIN
 * @see Satterthwaite, An approximate distribution of estimates of variance components (1946), from memory; Barton, Nelson & Xie, Quantifying input uncertainty via simulation confidence intervals (2014)
 * @example doubtInterval([10, 12, 14], [{ variance: 9, freedom: 19 }], null, 0.9).halfWidth // => 5.534796333117779
 */
export function doubtInterval(
  runs: readonly number[],
  parts: readonly InputPart[],
  split: VarianceSplit | null,
  level: number,
): DoubtInterval {
  needSample('an interval', runs, 'run', 2)
  needLevel(level)
  const tally = Tally.of(runs)
  const mean = tally.mean!
  const doubt = parts.reduce((sum, { variance }) => sum + variance, 0)
  const chance = tally.variance! / tally.count
  const total = doubt + chance
  if (!(total > 0)) return { mean, level, halfWidth: 0, low: mean, high: mean, freedom: null }
  const shares: readonly InputPart[] = [
    ...parts,
    { variance: doubt, freedom: split === null ? null : splitFreedom(split) },
    { variance: chance, freedom: tally.count - 1 },
  ]
  const inverse = shares.reduce((sum, { variance, freedom }) => sum + (freedom === null ? 0 : (variance / total) ** 2 / freedom), 0)
  const freedom = inverse > 0 ? 1 / inverse : null
  const p = (1 + level) / 2
  const halfWidth = (freedom === null ? normalQuantile(p) : tQuantile(p, freedom)) * Math.sqrt(total)
  return { mean, level, halfWidth, low: mean - halfWidth, high: mean + halfWidth, freedom }
}

/** Degrees of freedom of a variance that is the difference of two mean squares; null: there is none. */
function splitFreedom({ draws, replications, meanSquareBetween, meanSquareWithin }: VarianceSplit): number | null {
  const difference = meanSquareBetween - meanSquareWithin
  if (!(difference > 0)) return null
  return difference ** 2 / (meanSquareBetween ** 2 / (draws - 1) + meanSquareWithin ** 2 / (draws * (replications - 1)))
}
