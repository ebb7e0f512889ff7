import { StatisticsError } from '../statisticsError.ts'
import { betaQuantile } from './betaQuantile.ts'
import { needPositive, needProbability } from './domain.ts'
import { normalQuantile } from './normalQuantile.ts'

/** quantiles asked before: the sequential rules ask for the same ones again and again; a pure function, so that the cache is not seen */
const known = new Map<number, Map<number, number>>()
const KNOWN_MAX = 20_000
let knownCount = 0

/**
 * Quantile of Student's t.
 *
 * @param p   above 0 and below 1
 * @param df  degrees of freedom, above 0
 * @returns   relative error at most 1e-10 for df ≤ 10⁴, 1e-9 to 10⁶; from 10⁷ the normal quantile
 * @throws StatisticsError E_DOMAIN, E_NOT_SETTLED
 * @example tQuantile(0.75, 1) // => 1
 */
export function tQuantile(p: number, df: number): number {
  needProbability('tQuantile', p)
  needPositive('tQuantile', 'the degrees of freedom', df)
  const ofLevel = known.get(p)
  const found = ofLevel?.get(df)
  if (found !== undefined) return found
  const value = solve(p, df)
  if (knownCount >= KNOWN_MAX) {
    known.clear()
    knownCount = 0
  }
  const level = known.get(p) ?? new Map<number, number>()
  level.set(df, value)
  known.set(p, level)
  knownCount++
  return value
}

function solve(p: number, df: number): number {
  if (p === 0.5) return 0
  if (df >= 1e7) return normalQuantile(p)
  const { x, complement } = betaQuantile(2 * Math.min(p, 1 - p), df / 2, 0.5)
  const t = Math.sqrt((df * complement) / x)
  if (t === Infinity)
    throw new StatisticsError(
      'E_DOMAIN',
      `tQuantile: at probability ${p} and ${df} degrees of freedom the quantile is beyond the largest number.`,
    )
  return p < 0.5 ? -t : t
}
