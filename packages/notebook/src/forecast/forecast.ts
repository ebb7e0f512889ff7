/** What a line will make per shift and per week, and how much overtime its plan takes: from simulated shifts, never from means. */
import { netRate, overtimeMinutes } from '@loopwright/decide'
import { type BinomialEstimate, type ChanceVerdict, type OutputInterval, type QuantileEstimate, quantileEstimate } from '@loopwright/stats'
import { meetsPlan, outputMean, planVerdict } from '@loopwright/study'
import { weeksOf } from './weeks.ts'

export interface ForecastOptions {
  /** units wanted per shift; null: no plan */
  readonly plan: number | null
  /** of a shift, without breaks; seconds, > 0 */
  readonly netSeconds: number
  /** shifts whose output is added up, ≥ 1 */
  readonly shiftsPerWeek: number
  /** false: nothing is left to chance, and one shift tells all; default true */
  readonly chance?: boolean
}

/** Of shifts, or of weeks. */
export interface Spread {
  /** units, one entry for each simulated shift (week) */
  readonly units: readonly number[]
  /** null below 2 of them, but where nothing is left to chance */
  readonly mean: OutputInterval | null
  /** null below 2 of them, as are the other quantiles */
  readonly p10: QuantileEstimate | null
  readonly p50: QuantileEstimate | null
  readonly p90: QuantileEstimate | null
  /** null: no plan */
  readonly plan: number | null
  /** share with output ≥ plan; null without a plan, or without one of them */
  readonly meetsPlan: BinomialEstimate | null
  /** whether nine of ten meet it; null as `meetsPlan` */
  readonly planVerdict: ChanceVerdict | null
}

/** Time beyond the shift that the plan takes; minutes. */
export interface Overtime {
  /** of each simulated shift, minutes, ≥ 0 */
  readonly minutes: readonly number[]
  readonly mean: OutputInterval
  /** nine of ten shifts need no more, one of ten at least as much; null below 2 shifts */
  readonly p90: QuantileEstimate | null
  /** units per net minute, by which a shortfall is made up */
  readonly unitsPerMinute: number
}

/** What may be promised per shift and per week; units. */
export interface Forecast {
  readonly shift: Spread
  /** disjoint groups of simulated shifts, added up; those left over are not used */
  readonly week: Spread
  readonly shiftsPerWeek: number
  readonly netSeconds: number
  /** null without a plan, below 2 shifts that differ, or if nothing is made */
  readonly overtime: Overtime | null
}

/**
 * Forecast from the output of simulated shifts.
 *
 * Overtime of a shift is what its shortfall takes at the mean net rate, `max(0, plan − X)/rate`, averaged afterwards: the mean output hides every bad shift.
 *
 * @param units  output of independent simulated shifts, in the order of their replications
 * @throws RangeError  if the net time is not above 0, or the shifts per week are no whole number ≥ 1
 * @example forecast([10, 12], { plan: 12, netSeconds: 60, shiftsPerWeek: 2 }).week.units // => [22]
 */
export function forecast(units: readonly number[], options: ForecastOptions): Forecast {
  const { plan, netSeconds, shiftsPerWeek, chance = true } = options
  if (!(netSeconds > 0)) throw new RangeError(`the net time of a shift must be above 0 s, not ${netSeconds}`)
  if (!Number.isInteger(shiftsPerWeek) || shiftsPerWeek < 1)
    throw new RangeError(`shifts per week must be a whole number from 1 on, not ${shiftsPerWeek}`)
  return {
    shift: spreadOf(units, plan, chance),
    week: spreadOf(weeks(units, options), plan === null ? null : plan * shiftsPerWeek, chance),
    shiftsPerWeek,
    netSeconds,
    overtime: plan === null ? null : overtime(units, plan, options),
  }
}

/** Of shifts that are all the same one makes a week; of others as many as a week has, each used once. */
function weeks(units: readonly number[], { shiftsPerWeek, chance = true }: ForecastOptions): number[] {
  if (!chance) return units.slice(0, 1).map((made) => made * shiftsPerWeek)
  return weeksOf(units, shiftsPerWeek)
}

/**
 * How much shifts, or sums of them, spread.
 *
 * @param units   one entry for each
 * @param plan    units wanted of each; null: no plan
 * @param chance  false: nothing is left to chance
 * @example spreadOf([10, 12], 11, true).meetsPlan.successes // => 1
 */
export function spreadOf(units: readonly number[], plan: number | null, chance: boolean): Spread {
  const enough = units.length >= 2
  const at = (p: number): QuantileEstimate | null => (enough ? quantileEstimate(units, p) : null)
  return {
    units,
    mean: outputMean(units, chance),
    p10: at(0.1),
    p50: at(0.5),
    p90: at(0.9),
    plan,
    meetsPlan: meetsPlan(units, plan),
    planVerdict: plan === null ? null : planVerdict(units, plan, chance),
  }
}

function overtime(units: readonly number[], plan: number, { netSeconds, chance = true }: ForecastOptions): Overtime | null {
  const unitsPerMinute = netRate(units, netSeconds)
  const minutes = overtimeMinutes(units, plan, netSeconds)
  const mean = minutes === null ? null : outputMean(minutes, chance)
  return unitsPerMinute === null || minutes === null || mean === null
    ? null
    : { minutes, mean, p90: minutes.length < 2 ? null : quantileEstimate(minutes, 0.9), unitsPerMinute }
}
