import { Tally } from '../accumulate/tally.ts'
import { unequalLength } from '../messages.ts'
import { needLevel, needSample } from '../samples.ts'
import { tQuantile } from '../special/tQuantile.ts'

/** no difference shown: the interval holds 0, which is not "equal"; identical, constant: the difference has no spread, and no interval is needed */
export type DifferenceStatus = 'difference shown' | 'no difference shown' | 'identical in every replication' | 'always differs by the same'

/** First less second, in the same worlds. */
export interface PairedDifference {
  readonly n: number
  readonly mean: number
  /** of the differences, divisor n − 1 */
  readonly sd: number
  readonly level: number
  readonly halfWidth: number
  readonly low: number
  readonly high: number
  /** (variance of first + variance of second)/variance of the differences: worth so many times the replications; below 1 the streams do not line up; null without spread */
  readonly pairingGain: number | null
  readonly status: DifferenceStatus
}

/**
 * Difference of two scenarios run in the same worlds, replication by replication: mean ± t·sd/√n of the differences.
 *
 * @param first   one a replication, two or more
 * @param second  as many, in the same order
 * @param level   above 0 and below 1
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_UNEQUAL_LENGTH, E_DOMAIN
 * @see Law, Simulation Modeling and Analysis (from memory): paired t, common random numbers
 * @example pairedDifference([101, 99], [101, 99]).status // => 'identical in every replication'
 */
export function pairedDifference(first: readonly number[], second: readonly number[], level: number = 0.95): PairedDifference {
  if (first.length !== second.length) throw unequalLength('The first scenario', first.length, 'the second', second.length)
  needSample('a difference', first, 'replication', 2)
  needSample('a difference', second, 'replication', 2)
  needLevel(level)
  const differences = Tally.of(first.map((value, j) => value - second[j]!))
  const n = differences.count
  const mean = differences.mean!
  const sd = spread(differences, largest(first, second))
  if (sd === 0) {
    const status = mean === 0 ? 'identical in every replication' : 'always differs by the same'
    return { n, mean, sd, level, halfWidth: 0, low: mean, high: mean, pairingGain: null, status }
  }
  const halfWidth = (tQuantile((1 + level) / 2, n - 1) * sd) / Math.sqrt(n)
  const low = mean - halfWidth
  const high = mean + halfWidth
  const pairingGain = (Tally.of(first).variance! + Tally.of(second).variance!) / differences.variance!
  return { n, mean, sd, level, halfWidth, low, high, pairingGain, status: low > 0 || high < 0 ? 'difference shown' : 'no difference shown' }
}

/** One-sided: the mean difference is at least `low`. */
export interface PairedLowerLimit {
  readonly n: number
  readonly mean: number
  readonly sd: number
  readonly level: number
  readonly low: number
  readonly status: 'ok' | 'no spread'
}

/**
 * One-sided lower limit of a mean difference: mean − t·sd/√n with t at `level`; without spread the mean itself.
 *
 * @param differences  one a replication, two or more
 * @param level        above 0 and below 1
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_DOMAIN
 * @example pairedLowerLimit([1, 3], 0.75).low // => 1
 */
export function pairedLowerLimit(differences: readonly number[], level: number = 0.95): PairedLowerLimit {
  needSample('a limit of a difference', differences, 'replication', 2)
  needLevel(level)
  const tally = Tally.of(differences)
  const n = tally.count
  const mean = tally.mean!
  const sd = spread(tally, largest(differences, differences))
  return sd === 0
    ? { n, mean, sd, level, low: mean, status: 'no spread' }
    : { n, mean, sd, level, low: mean - (tQuantile(level, n - 1) * sd) / Math.sqrt(n), status: 'ok' }
}

/** a spread of the size of the rounding in a subtraction is none */
function spread(differences: Tally, scale: number): number {
  return differences.sd! <= 4 * Number.EPSILON * scale ? 0 : differences.sd!
}

function largest(first: readonly number[], second: readonly number[]): number {
  let most = 0
  for (let j = 0; j < first.length; j++) most = Math.max(most, Math.abs(first[j]!), Math.abs(second[j]!))
  return most
}
