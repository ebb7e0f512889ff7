import { notACount, notInRange, tooFew } from '../messages.ts'
import { needLevel } from '../samples.ts'
import { betaQuantile } from '../special/betaQuantile.ts'

/** ok; few: below 20 shifts, too few to promise anything; every one, none: no miss (no success) seen, which is not a chance of 1 (of 0) */
export type BinomialStatus = 'ok' | 'few' | 'every one' | 'none'

/** A chance, such as that of meeting the plan, from successes among independent shifts. */
export interface BinomialEstimate {
  readonly successes: number
  readonly n: number
  readonly level: number
  /** successes/n, 0 … 1 */
  readonly share: number
  readonly low: number
  readonly high: number
  readonly status: BinomialStatus
}

/**
 * Clopper–Pearson interval of a chance; it never covers less often than its level says.
 *
 * @param successes  whole number, 0 … n
 * @param n          independent shifts, whole number from 1
 * @param level      above 0 and below 1
 * @throws StatisticsError E_TOO_FEW, E_DOMAIN
 * @see Clopper & Pearson, The use of confidence or fiducial limits illustrated in the case of the binomial (1934)
 * @see Brown, Cai & DasGupta, Interval estimation for a binomial proportion (2001)
 * @example binomialEstimate(1, 1, 0.9).low // => 0.05
 */
export function binomialEstimate(successes: number, n: number, level: number = 0.95): BinomialEstimate {
  if (n === 0) throw tooFew('a chance', 0, 'replication', 1)
  if (!(Number.isInteger(n) && n >= 1)) throw notACount('The number of replications', n, 1)
  if (!(Number.isInteger(successes) && successes >= 0 && successes <= n)) throw notInRange('The number of successes', successes, 0, n)
  needLevel(level)
  const tail = (1 - level) / 2
  return {
    successes,
    n,
    level,
    share: successes / n,
    low: lowLimit(successes, n, tail),
    high: successes === n ? 1 : successes === 0 ? 1 - tail ** (1 / n) : betaQuantile(1 - tail, successes + 1, n - successes).x,
    status: n < 20 ? 'few' : successes === n ? 'every one' : successes === 0 ? 'none' : 'ok',
  }
}

function lowLimit(successes: number, n: number, tail: number): number {
  if (successes === 0) return 0
  return successes === n ? tail ** (1 / n) : betaQuantile(tail, successes, n - successes + 1).x
}
