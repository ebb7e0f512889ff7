import { StatisticsError } from '../statisticsError.ts'
import { constant } from './constant.ts'
import { discrete } from './discrete.ts'
import type { Distribution, DistributionKind } from './distribution.ts'
import { empirical } from './empirical.ts'
import { exponential } from './exponential.ts'
import { gamma } from './gamma.ts'
import type { Field, FieldIs, Inner, Kind, Words } from './kind.ts'
import { limited } from './limited.ts'
import { lognormal } from './lognormal.ts'
import { occasional } from './occasional.ts'
import { pert } from './pert.ts'
import { replay } from './replay.ts'
import { triangular } from './triangular.ts'
import { uniform } from './uniform.ts'
import { weibull } from './weibull.ts'

/** Every kind with its row: what a new one adds here, beside its file and its record. */
export const KINDS: { [K in DistributionKind]: Kind<K> } = {
  constant,
  uniform,
  triangular,
  pert,
  exponential,
  lognormal,
  gamma,
  weibull,
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
  draws: (d) => kindOf(d).draws?.(d, inner) ?? 'uniform',
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
 * Mean of the smaller of a value and a limit: of a time that is cut off at that limit. A replay list is taken as a sample of its values.
 *
 * @param limit  in the unit of the distribution
 * @throws StatisticsError E_DISTRIBUTION with the first reason of checkDistribution
 * @example meanUpTo({ kind: 'uniform', min: 0, max: 4 }, 2) // => 1.5
 */
export function meanUpTo(d: Distribution, limit: number): number {
  needUsable(d)
  return inner.momentBelow(d, 1, limit, true) + limit * (1 - inner.cdf(d, limit, true))
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

/**
 * Fields of each kind but `kind` itself, and what it is for, in the order in which kinds are told.
 *
 * @example distributionKinds().find(({ kind }) => kind === 'uniform').fields // => { min: ['value'], max: ['value'] }
 */
export function distributionKinds(): readonly DistributionForm[] {
  return Object.entries(KINDS).map(([kind, { fields, says }]) => ({ kind, fields, says }))
}

/** What the record of a kind holds. */
export interface DistributionForm {
  readonly kind: string
  readonly fields: Readonly<Record<string, Field>>
  readonly says: string
}

/**
 * A distribution in words; who asks says how its parts are written.
 *
 * @example distributionWords({ kind: 'uniform', min: 3, max: 6 }, { value: (x) => `${x} s`, share: String, number: String }) // => '3 s to 6 s, uniform'
 */
export function distributionWords(d: Distribution, to: Pick<Words, 'value' | 'share' | 'number'>): string {
  return kindOf(d).words(d, { ...to, mean: (one) => to.value(distributionMean(one)), distribution: (one) => distributionWords(one, to) })
}

/**
 * The same values, longer or shorter by a factor: what a draw was, it is now times the factor.
 *
 * @param factor  > 0
 * @example scaledTimes({ kind: 'lognormal', mean: 20, cv: 0.3 }, 0.5) // => { kind: 'lognormal', mean: 10, cv: 0.3 }
 */
export function scaledTimes(d: Distribution, factor: number): Distribution {
  const scaled = (is: FieldIs, part: unknown): unknown => {
    if (is === 'value' || is === 'positive' || is === 'extra') return (part as number) * factor
    if (is === 'limit') return part === null ? null : (part as number) * factor
    if (is === 'values') return (part as readonly number[]).map((value) => value * factor)
    return is === 'distribution' ? scaledTimes(part as Distribution, factor) : part
  }
  const { fields } = kindOf(d) as { fields: Readonly<Record<string, Field>> }
  const parts = Object.entries(d).map(([name, part]) => [name, name in fields ? scaled(fields[name]![0], part) : part])
  return Object.fromEntries(parts) as Distribution
}

/**
 * The same with a constant on top: at lognormal and gamma the mean grows and the cv stays, else the whole shape moves.
 *
 * @param by  ≥ 0, in the unit of its values
 * @example longerTimes({ kind: 'exponential', mean: 4 }, 2) // => { kind: 'limited', of: { kind: 'exponential', mean: 4 }, shift: 2, min: null, max: null }
 */
export function longerTimes(d: Distribution, by: number): Distribution {
  const { longer, fields } = kindOf(d) as Pick<Kind<DistributionKind>, 'longer'> & { fields: Readonly<Record<string, Field>> }
  if (longer !== undefined) return longer(d, by)
  const moves = (name: string): boolean => name in fields && MOVED.has(fields[name]![0])
  if (!Object.keys(d).some(moves)) return { kind: 'limited', of: d, shift: by, min: null, max: null }
  const moved = (part: unknown): unknown =>
    Array.isArray(part) ? part.map((value) => value + by) : part === null ? null : (part as number) + by
  return Object.fromEntries(Object.entries(d).map(([name, part]) => [name, moves(name) ? moved(part) : part])) as Distribution
}

/** fields that grow by what every value grows by */
const MOVED: ReadonlySet<FieldIs> = new Set<FieldIs>(['value', 'values', 'extra', 'limit'])

/**
 * Whether single values may have a chance of their own, so that two draws may be equal.
 *
 * @example hasAtoms({ kind: 'exponential', mean: 4 }) // => false
 */
export function hasAtoms(d: Distribution): boolean {
  return kindOf(d).atoms ?? false
}

/** @throws StatisticsError E_DISTRIBUTION with the first reason of checkDistribution */
export function needUsable(d: Distribution): void {
  const [reason] = checkDistribution(d)
  if (reason !== undefined) throw new StatisticsError('E_DISTRIBUTION', `This ${d?.kind ?? 'distribution'} cannot be used: ${reason}.`)
}
