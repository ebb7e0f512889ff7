import { interquartileRange } from 'simple-statistics'
import { lag1 } from '../accumulate/lag1.ts'
import { sampleQuantile } from '../accumulate/sampleQuantile.ts'
import { Tally } from '../accumulate/tally.ts'
import { notAboveZero } from '../messages.ts'
import { needLevel, needSample } from '../samples.ts'
import { smallestEnough } from '../smallestEnough.ts'
import { tQuantile } from '../special/tQuantile.ts'
import { StatisticsError } from '../statisticsError.ts'

/** Quartiles and fences; values outside are flagged for a look, never removed: a dropped part belongs to stoppages, and both results are shown. */
export interface Fences {
  readonly q1: number
  readonly q3: number
  readonly low: number
  readonly high: number
  /** rows from 1 */
  readonly flaggedRows: readonly number[]
}

/**
 * Fences at 1.5 times the distance of the quartiles (type 7).
 *
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER
 * @see Tukey, Exploratory Data Analysis (1977), from memory
 * @example fences([30, 31, 29, 32, 30, 58]).flaggedRows // => [6]
 */
export function fences(values: readonly number[]): Fences {
  needSample('fences', values, 'value', 4)
  const q1 = sampleQuantile(values, 0.25)
  const q3 = sampleQuantile(values, 0.75)
  const reach = 1.5 * interquartileRange([...values])
  const low = q1 - reach
  const high = q3 + reach
  const flaggedRows = values.flatMap((value, i) => (value < low || value > high ? [i + 1] : []))
  return { q1, q3, low, high, flaggedRows }
}

/** Neighbours in a time study that depend on each other: learning, fatigue, a change of crew. */
export interface Drift {
  readonly lag1: number
  /** 2/√n */
  readonly limit: number
  readonly warn: boolean
}

/**
 * Whether values hang together in the order they were measured: the lag-1 correlation beyond 2/√n says that the work or the measuring changed.
 *
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_NO_SPREAD
 * @example drift([30, 31, 30, 32, 31, 33, 32, 34, 33, 35]).warn // => false
 */
export function drift(values: readonly number[]): Drift {
  const r = lag1(values)
  const limit = 2 / Math.sqrt(values.length)
  return { lag1: r, limit, warn: Math.abs(r) > limit }
}

/**
 * How many values give the mean to within a relative half-width: the smallest m ≥ 2 with m ≥ (t·s/(k·mean))². It secures the mean only; for cv and tail ask for 50.
 *
 * @param values    a first sample, two or more
 * @param relative  such as 0.05
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_DOMAIN; E_TOO_LARGE above 100,000
 * @example observationsNeeded([30, 33, 28, 35, 31], 0.05) // => 14
 */
export function observationsNeeded(values: readonly number[], relative: number, level: number = 0.95): number {
  needSample('a sample size', values, 'value', 2)
  needLevel(level)
  if (!(relative > 0)) throw notAboveZero('The relative half-width', relative)
  const { mean, sd } = Tally.of(values)
  if (!(mean! > 0)) throw notAboveZero('The mean of the times', mean!)
  const share = sd! / (relative * mean!)
  const found = smallestEnough((m) => m >= (tQuantile((1 + level) / 2, m - 1) * share) ** 2, 2, 100_000)
  if (found !== null) return found
  throw new StatisticsError('E_TOO_LARGE', `More than 100,000 values would be needed for ${100 * relative} %: ask for a wider half-width.`)
}
