import { Tally } from '../accumulate/tally.ts'
import { notAboveZero, notACount } from '../messages.ts'
import { needLevel, needSample } from '../samples.ts'
import { smallestEnough } from '../smallestEnough.ts'
import { tQuantile } from '../special/tQuantile.ts'
import { StatisticsError } from '../statisticsError.ts'

/** How precise a mean shall be. At least one of the two; where both are given, meeting one of them is enough. */
export interface Precision {
  /** |mean − truth|/|truth|, such as 0.01; null: not asked */
  readonly relative: number | null
  /** half-width in the unit of the values; null: not asked */
  readonly absolute: number | null
}

/** more needed: none of the values given is enough, and there may be more; precision not reached: nMax values were not enough */
export type StoppingStatus = 'ok' | 'more needed' | 'precision not reached'

export interface Stopping {
  /** replications used: the first number that is enough, whoever ran ahead */
  readonly n: number
  readonly mean: number
  readonly halfWidth: number
  readonly level: number
  readonly status: StoppingStatus
}

/**
 * The first number of replications whose interval is narrow enough; looked for at every n in order, so that the answer does not depend on the number of workers.
 *
 * @param values     one a replication, in order of replication; as many as there are by now
 * @param precision  relative precision g is met when the half-width is ≤ g/(1 + g)·|mean|, for |m − µ| ≤ g/(1 + g)·|m| gives |m − µ| ≤ g·|µ|
 * @param nMin       10 or more
 * @param nMax       from nMin on
 * @throws StatisticsError E_TOO_FEW below nMin values, E_NOT_A_NUMBER, E_DOMAIN
 * @see Law, Simulation Modeling and Analysis (from memory): sequential procedure
 */
export function stopAt(
  values: readonly number[],
  precision: Precision,
  nMin: number = 10,
  nMax: number = 1000,
  level: number = 0.95,
): Stopping {
  checkPrecision(precision)
  needLevel(level)
  if (!(Number.isInteger(nMin) && nMin >= 10)) throw notACount('The first number of replications', nMin, 10)
  if (!(Number.isInteger(nMax) && nMax >= nMin)) throw notACount('The largest number of replications', nMax, nMin)
  needSample('a stopping rule', values, 'replication', nMin)
  const tally = new Tally()
  for (const value of values) {
    tally.add(value)
    if (tally.count < nMin) continue
    const halfWidth = halfWidthOf(tally.sd!, tally.count, level)
    const at = { n: tally.count, mean: tally.mean!, halfWidth, level }
    if (halfWidth <= allowed(precision, at.mean)) return { ...at, status: 'ok' }
    if (at.n === nMax) return { ...at, status: 'precision not reached' }
  }
  const n = tally.count
  return { n, mean: tally.mean!, halfWidth: halfWidthOf(tally.sd!, n, level), level, status: 'more needed' }
}

/**
 * How many replications will be needed, were mean and spread to stay as they are: the smallest i ≥ n that is enough.
 *
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_DOMAIN; E_PRECISION where more than 10⁷ would be needed
 * @example forecastReplications([412, 405, 431, 398, 420, 417, 409, 426, 402, 415], { relative: 0.01, absolute: null }) // => 28
 */
export function forecastReplications(values: readonly number[], precision: Precision, level: number = 0.95): number {
  checkPrecision(precision)
  needLevel(level)
  needSample('a forecast', values, 'replication', 2)
  const tally = Tally.of(values)
  const limit = allowed(precision, tally.mean!)
  const enough = (n: number): boolean => halfWidthOf(tally.sd!, n, level) <= limit
  const found = smallestEnough(enough, values.length, 1e7)
  if (found !== null) return found
  throw new StatisticsError('E_PRECISION', nearZero(tally.mean!, 'More than 10,000,000 replications would be needed'))
}

/** The sentence for a rule that did not stop; null where it did. */
export function stoppingSentence(stopping: Stopping): string | null {
  if (stopping.status === 'ok') return null
  const reached = stopping.mean === 0 ? '' : ` (now ${((100 * stopping.halfWidth) / Math.abs(stopping.mean)).toPrecision(2)} %)`
  const said = `Precision not reached after ${stopping.n} replications${reached}`
  return Math.abs(stopping.mean) <= 2 * stopping.halfWidth ? nearZero(stopping.mean, said) : `${said}.`
}

const nearZero = (mean: number, said: string): string =>
  `${said}: the mean, ${mean.toPrecision(3)}, is near zero; give an absolute half-width.`

const halfWidthOf = (sd: number, n: number, level: number): number =>
  sd === 0 ? 0 : (tQuantile((1 + level) / 2, n - 1) * sd) / Math.sqrt(n)

function allowed({ relative, absolute }: Precision, mean: number): number {
  const byShare = relative === null ? 0 : (relative / (1 + relative)) * Math.abs(mean)
  return Math.max(byShare, absolute ?? 0)
}

function checkPrecision({ relative, absolute }: Precision): void {
  if (relative === null && absolute === null) {
    throw new StatisticsError('E_PRECISION', 'No precision is asked for: give a relative one, such as 0.01, or an absolute half-width.')
  }
  if (relative !== null && !(relative > 0)) throw notAboveZero('The relative precision', relative)
  if (absolute !== null && !(absolute > 0)) throw notAboveZero('The absolute half-width', absolute)
}
