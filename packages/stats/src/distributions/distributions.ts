import { StatisticsError } from '../statisticsError.ts'
import { constant } from './constant.ts'
import { discrete } from './discrete.ts'
import type { Distribution, DistributionKind } from './distribution.ts'
import { empirical } from './empirical.ts'
import { exponential } from './exponential.ts'
import { gamma } from './gamma.ts'
import type { Inner, Kind } from './kind.ts'
import { limited } from './limited.ts'
import { lognormal } from './lognormal.ts'
import { occasional } from './occasional.ts'
import { pert } from './pert.ts'
import { replay } from './replay.ts'
import { triangular } from './triangular.ts'
import { uniform } from './uniform.ts'
import { weibull } from './weibull.ts'

const KINDS: { [K in DistributionKind]: Kind<K> } = {
  constant,
  uniform,
  triangular,
  exponential,
  lognormal,
  gamma,
  weibull,
  pert,
  empirical,
  discrete,
  replay,
  occasional,
  limited,
}

const DEPTH_MAX = 8

/** each kind's functions take its own record: the table is indexed by the record's own kind, which the compiler cannot follow */
export const kindOf = (d: Distribution): Kind<DistributionKind> => KINDS[d.kind] as unknown as Kind<DistributionKind>

/** The same questions for any kind. */
export const inner: Inner = {
  reasons: (d) => checkWithin(d, DEPTH_MAX),
  mean: (d) => kindOf(d).mean(d, inner),
  variance: (d) => kindOf(d).variance(d, inner),
  cdf: (d, x, inclusive) => kindOf(d).cdf(d, x, inclusive, inner),
  momentBelow: (d, order, x, inclusive) => kindOf(d).momentBelow(d, order, x, inclusive, inner),
}

/**
 * Reasons in plain words why these parameters cannot be used; an empty list: they can. Never throws on data.
 *
 * @example checkDistribution({ kind: 'uniform', min: 5, max: 2 }) // => ['min is 5 and max is 2; min must be below max']
 */
export function checkDistribution(d: Distribution): string[] {
  return checkWithin(d, DEPTH_MAX)
}

function checkWithin(d: Distribution, depth: number): string[] {
  if (typeof d !== 'object' || d === null || !Object.hasOwn(KINDS, d.kind)) {
    return [`the kind "${String((d as { kind?: unknown } | null)?.kind)}" is unknown; use one of ${Object.keys(KINDS).join(', ')}`]
  }
  if (depth === 0) return [`more than ${DEPTH_MAX} distributions inside one another; use fewer`]
  return kindOf(d).reasons(d, { ...inner, reasons: (one) => checkWithin(one, depth - 1) })
}

/**
 * Mean of a distribution, in its unit.
 *
 * @throws StatisticsError E_DISTRIBUTION with the first reason of checkDistribution
 * @example distributionMean({ kind: 'pert', min: 15, mode: 20, max: 37 }) // => 22
 */
export function distributionMean(d: Distribution): number {
  needUsable(d)
  return inner.mean(d)
}

/**
 * Variance of a distribution, in its unit squared; of a list, with divisor n.
 *
 * @throws StatisticsError E_DISTRIBUTION with the first reason of checkDistribution
 * @example distributionVariance({ kind: 'uniform', min: 0, max: 6 }) // => 3
 */
export function distributionVariance(d: Distribution): number {
  needUsable(d)
  return inner.variance(d)
}

/**
 * Chance of a value ≤ x.
 *
 * @throws StatisticsError E_DISTRIBUTION with the first reason of checkDistribution
 * @example distributionCdf({ kind: 'uniform', min: 0, max: 4 }, 1) // => 0.25
 */
export function distributionCdf(d: Distribution, x: number): number {
  needUsable(d)
  return inner.cdf(d, x, true)
}

/** @throws StatisticsError E_DISTRIBUTION with the first reason of checkDistribution */
export function needUsable(d: Distribution): void {
  const [reason] = checkDistribution(d)
  if (reason !== undefined) throw new StatisticsError('E_DISTRIBUTION', `This ${d?.kind ?? 'distribution'} cannot be used: ${reason}.`)
}
