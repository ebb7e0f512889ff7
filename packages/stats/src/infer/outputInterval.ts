import { sampleSkewness } from 'simple-statistics'
import { Tally } from '../accumulate/tally.ts'
import { needLevel, needSample } from '../samples.ts'
import { tQuantile } from '../special/tQuantile.ts'
import { meanInterval, type MeanInterval } from './meanInterval.ts'

/** skewed: too few replications for a shape so far from the symmetric one, the interval may promise too much; few replications: fewer than 10, the interval rests on the normal shape; no spread: all equal */
export type OutputStatus = 'ok' | 'few replications' | 'skewed' | 'no spread'

/** A mean over independent replications, with limits that allow for a skewed shape; they need not lie as far to the one side as to the other. */
export interface OutputInterval extends Omit<MeanInterval, 'status'> {
  /** the greater of mean − low and high − mean */
  readonly halfWidth: number
  /** of the replications, moments with divisor n: below 0 where a few are far worse than the rest; null below 3 of them or without spread */
  readonly skewness: number | null
  /** Hall: transformed Student t; Student t: below 10 replications; none needed: no spread */
  readonly method: 'Hall' | 'Student t' | 'none needed'
  readonly status: OutputStatus
}

/**
 * With fewer the skewness that they show is chance (that of 3 is at most 0.71 whatever the shape), and Student's t is left as it is. Measured: of near-normal
 * outputs both methods hold their word from 3 replications on, but Hall's interval is 1.7 times as wide with 3, 1.3 times with 5, 1.07 times with 10; of
 * outputs cut down by rare long stops neither holds it below 10. Johnson, Modified t tests and confidence intervals for asymmetrical populations (1978), who
 * corrects for the skewness of the sample, begins at 13 values (from memory).
 */
const HALL_FROM = 10

/**
 * So many replications for each square of the skewness (own: with rare long stops the limits hold their word from some 30 replications on, and miss in 7 of 100 with
 * 10). Cochran's rule for Student's t without transformation asks for 25.
 */
const REPLICATIONS_PER_SKEWNESS = 4

/**
 * The interval of a mean of outputs, one rule for all studies. From 10 replications on they need not be of near-normal shape: Student's t is made symmetric by a
 * cubic of the sample's skewness, and the limits are taken back through it; without skewness that is mean ± t·sd/√n but for terms of the order 1/n. Below 10
 * it is mean ± t·sd/√n. Differences of lines in the same worlds are nearer to normal than outputs, and have Student's interval: `pairedDifference`.
 *
 * @param values  one a replication, two or more
 * @param level   above 0 and below 1
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_DOMAIN
 * @see Hall, On the removal of skewness by transformation (1992), from memory: the monotone cubic
 * @see Cochran, Sampling Techniques (1977), from memory: n > 25·skewness² for Student's t
 * @example outputInterval([5, 5, 5]).status // => 'no spread'
 */
export function outputInterval(values: readonly number[], level: number = 0.95): OutputInterval {
  needSample('an interval', values, 'replication', 2)
  needLevel(level)
  const tally = Tally.of(values)
  const n = tally.count
  const mean = tally.mean!
  const sd = tally.sd!
  if (sd === 0) {
    return { n, mean, sd, level, halfWidth: 0, low: mean, high: mean, skewness: null, method: 'none needed', status: 'no spread' }
  }
  const skewness = n < 3 ? null : momentSkewness(values)
  if (n < HALL_FROM) return { ...meanInterval(values, level), skewness, method: 'Student t', status: 'few replications' }
  const t = tQuantile((1 + level) / 2, n - 1)
  const low = mean - sd * untransformed(t, n, skewness!)
  const high = mean - sd * untransformed(-t, n, skewness!)
  const halfWidth = Math.max(mean - low, high - mean)
  return { n, mean, sd, level, halfWidth, low, high, skewness, method: 'Hall', status: isSkewed(n, skewness!) ? 'skewed' : 'ok' }
}

/** Third central moment over the second to the power 3/2, both with divisor n: as in the source, not the estimate for a population. */
function momentSkewness(values: readonly number[]): number {
  const n = values.length
  return (sampleSkewness([...values]) * (n - 2)) / Math.sqrt(n * (n - 1))
}

/** The value of (mean − true mean)/sd at which the transformed t is t. */
function untransformed(t: number, n: number, skewness: number): number {
  const at = t / Math.sqrt(n) - skewness / (6 * n)
  const scale = skewness / 3
  // (∛(1 + 3·scale·at) − 1)/scale, by its series where the difference would cancel
  if (Math.abs(scale * at) < 1e-6) return at - scale * at * at
  return (Math.cbrt(1 + 3 * scale * at) - 1) / scale
}

const isSkewed = (n: number, skewness: number): boolean => n < REPLICATIONS_PER_SKEWNESS * skewness * skewness
