/** Figures of a promise whose shifts differ: each shift by itself, days and weeks added up from them. */
import { type PromiseSection, rampUp, type ShiftSection } from '@loopwright/decide'
import { type Spread, spreadOf } from '../forecast/forecast.ts'
import { weeksOf } from '../forecast/weeks.ts'
import { FEW } from '../words/planWords.ts'
import { needsUnits, promiseOf, type PromiseResult, type PromiseRuns, weekUnits } from './promiseFigures.ts'

/** What the promise of shifts that differ is made of. */
export interface ShiftsRuns {
  /** of the alternative */
  readonly name: string
  readonly section: PromiseSection
  /** in the order of the day, each under its own name, in worlds of its own, with the days a week on which it is worked */
  readonly shifts: readonly PromiseRuns[]
}

/** Figures of such a promise. */
export interface ShiftsResult {
  readonly kind: 'promise of shifts'
  /** in their order */
  readonly shifts: readonly PromiseResult[]
  /** a shift of each kind, added up; the day of fewest simulated shifts is the last */
  readonly day: Spread
  /** each shift on its own days, added up; each simulated shift is used once */
  readonly week: Spread
  /** minutes of overtime a week that the plans take, on average; null: no plan */
  readonly overtime: number | null
  readonly ramp: PromiseResult['ramp']
}

/**
 * A shift of a promise as a promise of its own.
 *
 * @example shiftSection({ of: 0, daysPerWeek: 5, shiftsPerDay: 2, shifts: null, until: '', learning: null }, { name: 'late', variation: null, changes: {}, crew: null, daysPerWeek: 4 }).daysPerWeek // => 4
 */
export const shiftSection = (section: PromiseSection, { daysPerWeek }: ShiftSection): PromiseSection => ({
  ...section,
  daysPerWeek,
  shiftsPerDay: 1,
  shifts: null,
  // people learn by the units of all shifts together
  learning: null,
})

/**
 * The seed of a shift: shifts of one day meet worlds of their own, as those of one kind do, so that their luck does not go together.
 *
 * @param index  in the order of the day, from 0
 * @example shiftSeed('42', 1) // => '42-shift-2'
 */
export const shiftSeed = (seed: string, index: number): string => (index === 0 ? seed : `${seed}-shift-${index + 1}`)

/**
 * The scenario of a shift: the alternative with what the shift changes. A variation goes before changes by path.
 *
 * @param shift  null: the alternative as it is
 * @throws RangeError  where the alternative is a variation, and the shift another
 * @example shiftChanges({ kind: 'set', changes: { plan: '300 per shift' } }, { name: 'late', variation: 'few', changes: {}, crew: null, daysPerWeek: 5 }) // => { variation: 'few', changes: { plan: '300 per shift' } }
 */
export function shiftChanges(
  source: { readonly kind: string; readonly variation?: string; readonly changes?: Readonly<Record<string, string>> },
  shift: ShiftSection | null,
): { readonly variation: string | null; readonly changes: Readonly<Record<string, string>> } {
  const own = shift?.variation ?? null
  if (source.variation !== undefined && own !== null)
    throw new RangeError(
      `shift "${shift!.name}" is the variation "${own}" of what is a variation itself ("${source.variation}"): write what the shift changes under "set:"`,
    )
  return { variation: source.variation ?? own, changes: { ...source.changes, ...shift?.changes } }
}

/**
 * Figures of each shift, and of days and weeks.
 *
 * @throws RangeError  where no shift makes anything
 * @example shiftsOf({ name: 'loop', section: promised.section, shifts: [promised, promised] }).day.units[0] === 2 * promised.forecast.shift.units[0] // => true
 */
export function shiftsOf({ section, shifts }: ShiftsRuns): ShiftsResult {
  const chance = shifts.some(({ forecast }) => forecast.sweep.chance)
  const plans = shifts.map(({ scenario }) => scenario.plan?.unitsPerWindow ?? null)
  const planned = (times: (shift: PromiseRuns) => number): number | null =>
    plans.includes(null) ? null : shifts.reduce((sum, shift, index) => sum + plans[index]! * times(shift), 0)
  const days = shifts.map(({ forecast }) => forecast.shift.units)
  const weeks = shifts.map(({ forecast, section: own }) =>
    forecast.sweep.chance ? weeksOf(forecast.shift.units, own.daysPerWeek) : forecast.shift.units.map((made) => made * own.daysPerWeek),
  )
  const week = spreadOf(
    together(weeks),
    planned(({ section: own }) => own.daysPerWeek),
    chance,
  )
  if (!shifts.some(makes)) needsUnits([0])
  const results = shifts.map((shift) => (makes(shift) ? promiseOf(shift) : IDLE))
  return {
    kind: 'promise of shifts',
    shifts: results,
    day: spreadOf(
      together(days),
      planned(() => 1),
      chance,
    ),
    week,
    overtime: plans.includes(null)
      ? null
      : shifts.reduce((sum, { forecast, section: own }) => sum + (forecast.overtime?.mean.mean ?? 0) * own.daysPerWeek, 0),
    ramp: rampOf(section, shifts, week),
  }
}

const makes = ({ forecast }: PromiseRuns): boolean => forecast.shift.units.some((made) => made > 0)

/** A shift in which nothing is made has no pace. */
const IDLE: PromiseResult = { kind: 'promise', takt: null, lineEfficiency: null, balanceLoss: null, constraint: null, ramp: [] }

/** Sums of what stands at the same place; as many as the shortest list has. */
const together = (lists: readonly (readonly number[])[]): number[] =>
  Array.from({ length: Math.min(...lists.map(({ length }) => length)) }, (_, at) => lists.reduce((sum, list) => sum + list[at]!, 0))

/** What people learn is counted over the units of all shifts. */
function rampOf({ learning }: PromiseSection, shifts: readonly PromiseRuns[], week: Spread): PromiseResult['ramp'] {
  if (learning === null || shifts.some(({ slower }) => slower.length < 2)) return []
  const low = weeksEnough(week) && week.mean!.mean > 0 ? week.p10!.point / week.mean!.mean : 1
  const units = (factor: number): number => shifts.reduce((sum, { slower, section }) => sum + weekUnits(slower, factor, section), 0)
  return rampUp(learning, units, learning.weeks).map((one) => ({ ...one, low: one.units * low }))
}

/** Weeks are promised from so many on. */
export const weeksEnough = ({ units, p10, mean }: Spread): boolean =>
  p10 !== null && mean !== null && (units.length >= FEW || units.every((made) => made === units[0]))
