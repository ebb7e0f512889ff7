import { Tally } from '../accumulate/tally.ts'
import { needLevel, needSample } from '../samples.ts'
import { tQuantile } from '../special/tQuantile.ts'

/** ok; few replications: fewer than 10, the interval rests on the normal shape; no spread: all equal, nothing random reaches this number */
export type MeanStatus = 'ok' | 'few replications' | 'no spread'

/** A mean over independent replications and how well it is known. */
export interface MeanInterval {
  readonly n: number
  readonly mean: number
  /** between replications, divisor n − 1 */
  readonly sd: number
  readonly level: number
  readonly halfWidth: number
  readonly low: number
  readonly high: number
  readonly status: MeanStatus
}

/**
 * Interval of the mean over independent replications: mean ± t·sd/√n. More replications narrow it.
 *
 * @param values  one a replication, two or more
 * @param level   above 0 and below 1
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_DOMAIN
 * @see Law, Simulation Modeling and Analysis (from memory)
 * @example meanInterval([5, 5, 5]).status // => 'no spread'
 */
export function meanInterval(values: readonly number[], level: number = 0.95): MeanInterval {
  needSample('an interval', values, 'replication', 2)
  needLevel(level)
  const tally = Tally.of(values)
  const n = tally.count
  const mean = tally.mean!
  const sd = tally.sd!
  const halfWidth = sd === 0 ? 0 : (tQuantile((1 + level) / 2, n - 1) * sd) / Math.sqrt(n)
  return { n, mean, sd, level, halfWidth, low: mean - halfWidth, high: mean + halfWidth, status: meanStatus(n, sd) }
}

export function meanStatus(n: number, sd: number): MeanStatus {
  if (sd === 0) return 'no spread'
  return n < 10 ? 'few replications' : 'ok'
}
