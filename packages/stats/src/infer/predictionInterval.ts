import { Tally } from '../accumulate/tally.ts'
import { notACount } from '../messages.ts'
import { needLevel, needSample } from '../samples.ts'
import { tQuantile } from '../special/tQuantile.ts'
import { type MeanStatus, meanStatus } from './meanInterval.ts'

/** Where the mean of m further shifts will lie. More replications do not narrow it below the spread of the shifts. */
export interface PredictionInterval {
  readonly n: number
  /** further shifts whose mean is foretold; 1: a single shift */
  readonly m: number
  readonly mean: number
  readonly sd: number
  readonly level: number
  readonly halfWidth: number
  readonly low: number
  readonly high: number
  /** without the near-normal shape: the next shift lies in min … max of those seen with this chance, (n − 1)/(n + 1) */
  readonly rangeCoverage: number
  readonly status: MeanStatus
}

/**
 * Prediction interval of the mean of m further shifts: mean ± t·sd·√(1/m + 1/n). Assumes shifts of near-normal shape.
 *
 * @param values  one a replication, two or more
 * @param level   above 0 and below 1
 * @param m       whole number from 1
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_DOMAIN
 * @see Hahn & Meeker, Statistical Intervals (1991), from memory
 * @example predictionInterval([4, 6], 0.5).halfWidth // => 1.7320508075688772
 */
export function predictionInterval(values: readonly number[], level: number = 0.95, m: number = 1): PredictionInterval {
  needSample('a prediction', values, 'replication', 2)
  needLevel(level)
  if (!(Number.isInteger(m) && m >= 1)) throw notACount('The number of further shifts', m, 1)
  const tally = Tally.of(values)
  const n = tally.count
  const mean = tally.mean!
  const sd = tally.sd!
  const halfWidth = sd === 0 ? 0 : tQuantile((1 + level) / 2, n - 1) * sd * Math.sqrt(1 / m + 1 / n)
  const rangeCoverage = (n - 1) / (n + 1)
  return { n, m, mean, sd, level, halfWidth, low: mean - halfWidth, high: mean + halfWidth, rangeCoverage, status: meanStatus(n, sd) }
}
