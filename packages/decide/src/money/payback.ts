/** What alternatives are worth against today, from the output of their simulated shifts: overtime shift by shift, then money. */
import { meanInterval, type MeanInterval, meanOf } from '@loopwright/stats'
import { type BreakEven, type BreakEvenCurve, breakEven, breakEvenCurves } from './breakEven.ts'
import type { Worth } from './cashFlow.ts'
import { MoneyError } from './moneyError.ts'
import { type NaiveSaving, naiveSaving } from './naive.ts'
import { minutesOf, type MoneyInputs, type PricedLine, savingsOf, worthOf } from './pricedLine.ts'
import type { Savings } from './savings.ts'
import { type MoneySpread, moneySpread } from './spread.ts'

/** What one alternative is worth against today. */
export interface PaybackOf {
  readonly name: string
  /** minutes a shift, of the same worlds: today's less this line's */
  readonly saved: MeanInterval
  readonly overtimeBefore: number
  readonly overtimeAfter: number
  readonly savings: Savings
  readonly worth: Worth
  /** the investment is back within the hurdle, by the means */
  readonly withinHurdle: boolean
  /** the same by seconds × units; null where the mean times of a line are not known */
  readonly naive: { readonly saving: NaiveSaving; readonly savings: Savings; readonly worth: Worth } | null
  readonly spread: MoneySpread
  readonly breakEven: BreakEven
  readonly curves: readonly BreakEvenCurve[]
}

/** What all alternatives are worth against today. */
export interface PaybackResult {
  readonly kind: 'payback'
  /** name of today's line */
  readonly today: string
  readonly plan: number
  /** minutes a shift */
  readonly overtimeToday: number
  readonly money: MoneyInputs
  readonly alternatives: readonly PaybackOf[]
}

/** What the spread is drawn with. */
export interface PaybackOptions {
  /** names the draws of the spread */
  readonly seed: string
}

/**
 * Payback of every alternative against today, from shifts that all lines met in the same worlds.
 *
 * @param today         the line as it is
 * @param alternatives  each with as many shifts, in the same worlds
 * @param plan          units wanted per shift, > 0
 * @throws MoneyError   below 2 shifts, where shifts are not as many, or where a line makes nothing
 * @see common practice, no source: seconds saved count where they limit the line, and overtime is taken shift by shift
 * @example payback({ name: 'now', units: [290, 300], netSeconds: 27_000, exchangeSeconds: 84.4, crew: 8, investment: { value: 0, doubt: 0 }, runningCost: { value: 0, doubt: 0 }, salvage: 0 }, [{ name: 'loop', units: [330, 335], netSeconds: 27_000, exchangeSeconds: 75.4, crew: 8, investment: { value: 410_000, doubt: 0 }, runningCost: { value: 12_000, doubt: 0 }, salvage: 0 }], 320, { wage: { value: 38, doubt: 0 }, overtimeFactor: 1.5, daysPerYear: 230, shiftsPerDay: 2, paidHours: 7.5, years: 7, interest: 0.1, hurdleMonths: 24, overtimeWorked: null }, { seed: '1' }).alternatives[0].naive.saving.minutesPerDay // => 96
 */
export function payback(
  today: PricedLine,
  alternatives: readonly PricedLine[],
  plan: number,
  money: MoneyInputs,
  options: PaybackOptions,
): PaybackResult {
  const before = minutesOf(today, plan)
  return {
    kind: 'payback',
    today: today.name,
    plan,
    overtimeToday: meanOf(before),
    money,
    alternatives: alternatives.map((line) => {
      if (line.units.length !== today.units.length)
        throw new MoneyError(
          `"${line.name}" has ${line.units.length} simulated shifts and "${today.name}" ${today.units.length}: they must be the same worlds`,
        )
      return paybackOf(today, before, line, plan, money, options)
    }),
  }
}

function paybackOf(
  today: PricedLine,
  before: readonly number[],
  line: PricedLine,
  plan: number,
  money: MoneyInputs,
  options: PaybackOptions,
): PaybackOf {
  const after = minutesOf(line, plan)
  const savings = savingsOf(today, line, meanOf(before), meanOf(after), money)
  const worth = worthOf(line, savings, money)
  const naive =
    today.exchangeSeconds === null || line.exchangeSeconds === null
      ? null
      : naiveSaving(today.exchangeSeconds - line.exchangeSeconds, plan, money.shiftsPerDay)
  // the envelope knows neither overtime really worked nor what is left of it
  const naiveSavings =
    naive === null ? null : savingsOf(today, line, naive.minutesPerDay / money.shiftsPerDay, 0, { ...money, overtimeWorked: null })
  const base = { today, line, plan, money }
  return {
    name: line.name,
    saved: meanInterval(before.map((minutes, world) => minutes - after[world]!)),
    overtimeBefore: meanOf(before),
    overtimeAfter: meanOf(after),
    savings,
    worth,
    withinHurdle: worth.paybackMonths !== null && worth.paybackMonths <= money.hurdleMonths,
    naive: naive === null ? null : { saving: naive, savings: naiveSavings!, worth: worthOf(line, naiveSavings!, money) },
    spread: moneySpread(before, after, base, options.seed),
    breakEven: breakEven(base, money.hurdleMonths),
    curves: breakEvenCurves(base),
  }
}
