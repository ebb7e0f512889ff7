import { needLevel, needSample, sorted } from '../samples.ts'
import { predictionInterval } from './predictionInterval.ts'

/** Where one further window will lie. */
export interface WindowInterval {
  readonly n: number
  readonly low: number
  readonly high: number
  /** asked for */
  readonly level: number
  /** order statistics: holds for any shape; Student t: too few windows for that, the shape is taken for near-normal, but never narrower than the windows seen; none needed: no spread */
  readonly method: 'order statistics' | 'Student t' | 'none needed'
  /** chance that the next window lies within: of order statistics that of their ranks, at least `level`; null: not known for any shape */
  readonly coverage: number | null
}

/**
 * Interval for one further window, like those seen: as many of the lowest and of the highest windows are left out as the level allows, where there are enough of
 * them (39 for 95 %); else the prediction interval of the normal shape, widened to the windows seen.
 *
 * @param values  one a replication, two or more
 * @param level   above 0 and below 1
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_DOMAIN
 * @see Hahn & Meeker, Statistical Intervals (1991), from memory: the next value lies between the r-th from either end with chance (n + 1 − 2r)/(n + 1)
 * @example windowInterval(Array.from({ length: 39 }, (_, k) => k)).coverage // => 0.95
 */
export function windowInterval(values: readonly number[], level: number = 0.95): WindowInterval {
  needSample('a prediction', values, 'replication', 2)
  needLevel(level)
  const n = values.length
  const inOrder = sorted(values)
  const least = inOrder[0]!
  const most = inOrder.at(-1)!
  if (least === most) return { n, low: least, high: most, level, method: 'none needed', coverage: null }
  // a rank that is whole but for rounding counts
  const rank = Math.floor(((1 - level) / 2) * (n + 1) + 1e-9)
  if (rank >= 1) {
    const coverage = (n + 1 - 2 * rank) / (n + 1)
    return { n, low: inOrder[rank - 1]!, high: inOrder[n - rank]!, level, method: 'order statistics', coverage }
  }
  const normal = predictionInterval(values, level)
  return { n, low: Math.min(least, normal.low), high: Math.max(most, normal.high), level, method: 'Student t', coverage: null }
}
