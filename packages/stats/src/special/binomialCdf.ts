import { StatisticsError } from '../statisticsError.ts'
import { needShare } from './domain.ts'
import { betaTails } from './incompleteBeta.ts'

/**
 * Chance of at most k successes in n independent trials.
 *
 * @param k  whole number; below 0 the chance is 0, from n on it is 1
 * @param n  whole number, 0 or more
 * @param p  chance of one success, 0 … 1
 * @returns  relative error at most 1e-12
 * @throws StatisticsError E_DOMAIN
 * @example binomialCdf(0, 2, 0.5) // => 0.25
 */
export function binomialCdf(k: number, n: number, p: number): number {
  if (!Number.isInteger(k)) throw new StatisticsError('E_DOMAIN', `binomialCdf: k is ${k}; it must be a whole number.`)
  if (!(Number.isInteger(n) && n >= 0)) throw new StatisticsError('E_DOMAIN', `binomialCdf: n is ${n}; it must be a whole number from 0.`)
  needShare('binomialCdf', 'p', p)
  if (k < 0) return 0
  if (k >= n || p === 0) return 1
  if (p === 1) return 0
  return betaTails(n - k, k + 1, 1 - p, p).lower
}
