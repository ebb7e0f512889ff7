/** One way to build a line, priced: its simulated shifts, its people, its money. */
import { projectWorth, type Worth } from './cashFlow.ts'
import { MoneyError } from './moneyError.ts'
import { overtimeMinutes } from './overtime.ts'
import { annualSavings, type Rates, type Savings } from './savings.ts'

/** A number, and how far it may be off: the true one lies within ± doubt, anywhere alike. */
export interface Doubted {
  readonly value: number
  /** share of the value, 0 … 1 */
  readonly doubt: number
}

/** What money is reckoned with. */
export interface MoneyInputs extends Omit<Rates, 'wage'> {
  readonly wage: Doubted
  /** looked at, a whole number ≥ 1 */
  readonly years: number
  /** share a year, ≥ 0 */
  readonly interest: number
  /** the investment must be back within so many months */
  readonly hurdleMonths: number
  /** minutes of overtime a shift that are really worked today; null: not known */
  readonly overtimeWorked: number | null
}

/** One way to build the line: what its simulated shifts made, and what it costs. */
export interface PricedLine {
  readonly name: string
  /** output of simulated shifts, in the order of their worlds */
  readonly units: readonly number[]
  /** of a shift, without breaks, > 0 */
  readonly netSeconds: number
  /** mean time from one unit to the next at its constraint, by mean times alone; null: not known */
  readonly exchangeSeconds: number | null
  readonly crew: number
  readonly investment: Doubted
  /** money a year */
  readonly runningCost: Doubted
  /** got for it after the last year. */
  readonly salvage: number
}

/** Two lines, the plan and the money: what a saving is made of. */
export interface Base {
  readonly today: PricedLine
  readonly line: PricedLine
  readonly plan: number
  readonly money: MoneyInputs
}

/** What is saved a year with so many minutes of overtime a shift before and after. */
export function savingsOf(today: PricedLine, line: PricedLine, before: number, after: number, money: MoneyInputs): Savings {
  const use = (of: PricedLine, overtimeMinutes: number) => ({ crew: of.crew, overtimeMinutes, runningCost: of.runningCost.value })
  return annualSavings(use(today, before), use(line, after), { ...money, wage: money.wage.value }, money.overtimeWorked ?? undefined)
}

/** What these savings make of the investment. */
export function worthOf(line: PricedLine, { annual }: Savings, { years, interest }: MoneyInputs): Worth {
  return projectWorth({ investment: line.investment.value, annual, years, interest, salvage: line.salvage })
}

/** @throws MoneyError  below 2 shifts, or if nothing is made */
export function minutesOf({ name, units, netSeconds }: PricedLine, plan: number): number[] {
  if (units.length < 2) throw new MoneyError(`"${name}" has ${units.length} simulated shifts: money needs at least 2`)
  const minutes = overtimeMinutes(units, plan, netSeconds)
  if (minutes === null) throw new MoneyError(`"${name}" makes nothing: no overtime can make up the plan of ${plan}`)
  return minutes
}
