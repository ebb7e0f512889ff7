import { quantileSorted } from 'simple-statistics'
import { notACount, notAShare } from '../messages.ts'
import { needLevel, needSample, sorted } from '../samples.ts'
import { binomialCdf } from '../special/binomialCdf.ts'

/** ok; one limit, no limit: too few replications for the other, or for both */
export type QuantileStatus = 'ok' | 'one limit' | 'no limit'

/** A quantile of shifts, with limits that hold for any shape. P10 is the value that nine of ten shifts exceed. */
export interface QuantileEstimate {
  readonly p: number
  readonly n: number
  /** asked for */
  readonly level: number
  /** type 7 */
  readonly point: number
  /** an order statistic; null: too few replications for a lower limit */
  readonly low: number | null
  readonly high: number | null
  /** real chance that the limits enclose the quantile, at least level where there are both */
  readonly coverage: number
  readonly status: QuantileStatus
}

/** Ranks from 1 of the order statistics that bound a quantile; null: there is none. */
export interface QuantileRanks {
  readonly lower: number | null
  readonly upper: number | null
  readonly coverage: number
}

/**
 * Estimate of a quantile over independent replications: type 7, with distribution-free limits by order statistics.
 *
 * Needs independent replications: not batches of one run, nor several inner runs of one outer draw.
 *
 * @param values  one a replication, two or more
 * @param p       above 0 and below 1
 * @param level   above 0 and below 1
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_DOMAIN
 * @see Hahn & Meeker, Statistical Intervals (1991)
 * @example quantileEstimate([3, 1, 2], 0.5).point // => 2
 */
export function quantileEstimate(values: readonly number[], p: number, level: number = 0.95): QuantileEstimate {
  needSample('a quantile of shifts', values, 'replication', 2)
  const { lower, upper, coverage } = quantileRanks(values.length, p, level)
  const inOrder = sorted(values)
  const limits = (lower === null ? 0 : 1) + (upper === null ? 0 : 1)
  return {
    p,
    n: values.length,
    level,
    point: quantileSorted(inOrder, p),
    low: lower === null ? null : inOrder[lower - 1]!,
    high: upper === null ? null : inOrder[upper - 1]!,
    coverage,
    status: limits === 2 ? 'ok' : limits === 1 ? 'one limit' : 'no limit',
  }
}

/**
 * Ranks whose order statistics bound the p quantile of n independent values: lower the largest r with B(r − 1) ≤ α/2, upper the smallest r with B(r − 1) ≥ 1 − α/2.
 *
 * @example quantileRanks(36, 0.1, 0.95).upper // => 8
 */
export function quantileRanks(n: number, p: number, level: number): QuantileRanks {
  if (!(Number.isInteger(n) && n >= 1)) throw notACount('The number of replications', n, 1)
  if (!(p > 0 && p < 1)) throw notAShare('The share p', p)
  needLevel(level)
  const tail = (1 - level) / 2
  // B(r − 1) rises with r: rank r passes `least` from some rank on
  const firstRank = (passes: (chance: number) => boolean): number => {
    let below = 0
    let at = n + 1
    while (at - below > 1) {
      const middle = (below + at) >> 1
      if (passes(binomialCdf(middle - 1, n, p))) at = middle
      else below = middle
    }
    return at
  }
  const lower = firstRank((chance) => chance > tail) - 1
  const upper = firstRank((chance) => chance >= 1 - tail)
  const chanceBelowUpper = upper > n ? 1 : binomialCdf(upper - 1, n, p)
  const chanceBelowLower = lower < 1 ? 0 : binomialCdf(lower - 1, n, p)
  return { lower: lower < 1 ? null : lower, upper: upper > n ? null : upper, coverage: chanceBelowUpper - chanceBelowLower }
}
