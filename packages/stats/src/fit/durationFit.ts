import type { Distribution } from '../distributions/distribution.ts'
import { tooFew, unequalLength } from '../messages.ts'
import { needSample } from '../samples.ts'
import { StatisticsError } from '../statisticsError.ts'
import type { Family, FamilyParameters, FamilyRules } from './family.ts'
import { gammaFit } from './gammaFit.ts'
import { lognormalFit } from './lognormalFit.ts'
import { weibullFit } from './weibullFit.ts'

export const FAMILIES: readonly Family[] = ['lognormal', 'gamma', 'weibull']

const RULES: Readonly<Record<Family, FamilyRules>> = { lognormal: lognormalFit, gamma: gammaFit, weibull: weibullFit }

export const rulesOf = (family: Family): FamilyRules => RULES[family]

/** Where the shift comes from: given by who knows the work (two parameters), or estimated from the data (three). */
export type Shift = { readonly from: 'given'; readonly seconds: number } | { readonly from: 'data' }

/** No dead time: values are fitted as they are. */
export const NO_SHIFT: Shift = { from: 'given', seconds: 0 }

/** A family fitted to times. */
export interface DurationFit {
  readonly family: Family
  readonly n: number
  /** the physically shortest time that was taken away first; 0: none */
  readonly shift: number
  readonly shiftFrom: Shift['from']
  /** see FamilyParameters */
  readonly parameters: FamilyParameters
  readonly logLikelihood: number
  readonly aic: number
  /** null where n is too small for it */
  readonly aicc: number | null
  /** complete, for the simulation */
  readonly distribution: Distribution
}

/**
 * Maximum likelihood fit of one family to times.
 *
 * @param values   two or more, above the shift, not all equal
 * @param shift    given (0: none), or estimated from the data
 * @param weights  sum to 1; for input uncertainty; null: all equal
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER; E_FIT for a value not above the shift (with its row), or all equal values
 * @example fitDuration([1, Math.E, Math.E ** 2], 'lognormal').parameters[0] // => 1
 */
export function fitDuration(
  values: readonly number[],
  family: Family,
  shift: Shift = NO_SHIFT,
  weights: readonly number[] | null = null,
): DurationFit {
  const { seconds, above, parameters } = fittedCurve(values, family, shift, weights)
  const rules = rulesOf(family)
  const logLikelihood = above.reduce(
    (sum, x, i) => sum + (weights === null ? 1 : weights[i]! * above.length) * rules.lnDensity(parameters, x),
    0,
  )
  const p = shift.from === 'data' ? 3 : 2
  const n = values.length
  const aic = 2 * p - 2 * logLikelihood
  const plain = rules.distribution(parameters)
  return {
    family,
    n,
    shift: seconds,
    shiftFrom: shift.from,
    parameters,
    logLikelihood,
    aic,
    aicc: n > p + 1 ? aic + (2 * p * (p + 1)) / (n - p - 1) : null,
    distribution: seconds === 0 ? plain : { kind: 'limited', of: plain, shift: seconds, min: null, max: null },
  }
}

/** A curve by its family, its parameters and what was taken away first. */
export type Curve = Pick<DurationFit, 'family' | 'parameters' | 'shift'>

/** The curve alone, without how likely it is. @throws StatisticsError  as `fitDuration` */
export function fitCurve(values: readonly number[], family: Family, shift: Shift): Curve {
  const { seconds, parameters } = fittedCurve(values, family, shift, null)
  return { family, parameters, shift: seconds }
}

function fittedCurve(
  values: readonly number[],
  family: Family,
  shift: Shift,
  weights: readonly number[] | null,
): { readonly seconds: number; readonly above: readonly number[]; readonly parameters: FamilyParameters } {
  needSample('a fit', values, 'value', 2)
  if (weights !== null && weights.length !== values.length)
    throw unequalLength('The list of values', values.length, 'the weights', weights.length)
  const seconds = shift.from === 'data' ? shiftFromData(values) : shift.seconds
  if (!(seconds >= 0 && seconds < Infinity)) throw new StatisticsError('E_FIT', `The shift ${seconds} is not a time: give 0 or more.`)
  const above = values.map((value) => value - seconds)
  needAboveShift(values, seconds)
  if (above.every((value) => value === above[0])) {
    throw new StatisticsError('E_FIT', `All ${values.length} values are ${values[0]}: use a constant, there is nothing to fit.`)
  }
  return { seconds, above, parameters: rulesOf(family).fit(above, weights) }
}

function needAboveShift(values: readonly number[], seconds: number): void {
  const row = values.findIndex((value) => !(value > seconds))
  if (row < 0) return
  const value = values[row]!
  throw new StatisticsError(
    'E_FIT',
    seconds === 0
      ? `Value ${value} in row ${row + 1}: a task time must be greater than 0.`
      : `Value ${value} in row ${row + 1}: a task time must be greater than the shift ${seconds}.`,
  )
}

/**
 * Shift estimated from the data: (x₁xₙ − x_k²)/(x₁ + xₙ − 2x_k), x_k the first value above the smallest.
 *
 * A shift known from the work is better; a free three-parameter likelihood has no maximum.
 *
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER; E_FIT where the data allow none
 * @see Dubey, Some percentile estimators for Weibull parameters (1967); Law, Simulation Modeling and Analysis (from memory)
 * @example shiftFromData([3, 2, 9]) // => 1.8
 */
export function shiftFromData(values: readonly number[]): number {
  needSample('a shift', values, 'value', 3)
  const inOrder = [...values].sort((a, b) => a - b)
  const least = inOrder[0]!
  const most = inOrder.at(-1)!
  const next = inOrder.find((value) => value > least)
  if (next === undefined) throw tooFew('a shift', 1, 'different value', 3)
  const seconds = (least * most - next * next) / (least + most - 2 * next)
  if (2 * next >= least + most || seconds < 0 || seconds >= least) {
    throw new StatisticsError('E_FIT', 'The data give no shift: give the physically shortest time instead, or none.')
  }
  return seconds
}
