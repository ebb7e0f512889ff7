/** At what wage, volume and investment an alternative just meets the hurdle, and how the payback moves with each. */
import { meanOf } from '@loopwright/stats'
import { paybackMonths } from './cashFlow.ts'
import { type Base, minutesOf, type PricedLine, savingsOf } from './pricedLine.ts'

/** What is moved. */
export type BreakEvenInput = 'wage' | 'volume' | 'investment'

/** The value of one input at which the payback is just the hurdle, all else as it is. */
export interface BreakEvenPoint {
  readonly value: number
  /** what it is now */
  readonly now: number
}

/** Where the hurdle is just met; null: by no value that was looked at. */
export interface BreakEven {
  /** money per person and hour, at least */
  readonly wage: BreakEvenPoint | null
  /** units wanted per shift, at least */
  readonly volume: BreakEvenPoint | null
  /** money, at most */
  readonly investment: BreakEvenPoint | null
}

/** Payback against one input. */
export interface BreakEvenCurve {
  readonly input: BreakEvenInput
  readonly points: readonly {
    /** of the value now, such as 0.9 */
    readonly factor: number
    readonly value: number
    /** null: never */
    readonly paybackMonths: number | null
  }[]
}

/** from 60 to 140 % of what it is now */
const FACTORS = Array.from({ length: 17 }, (_, step) => (60 + 5 * step) / 100)
/** beyond, a plan is another line */
const VOLUME_MOST = 1.5

/** The money with one of its inputs moved. */
function moved(base: Base, input: BreakEvenInput, factor: number): Base {
  const { line, plan, money } = base
  switch (input) {
    case 'wage':
      return { ...base, money: { ...money, wage: { ...money.wage, value: money.wage.value * factor } } }
    case 'volume':
      return { ...base, plan: plan * factor }
    case 'investment':
      return { ...base, line: { ...line, investment: { ...line.investment, value: line.investment.value * factor } } }
  }
}

function annualOf({ today, line, plan, money }: Base): number {
  const minutes = (of: PricedLine): number => meanOf(minutesOf(of, plan))
  return savingsOf(today, line, minutes(today), minutes(line), money).annual
}

const monthsOf = (base: Base): number | null => paybackMonths(base.line.investment.value, annualOf(base))

/** Payback against wage, volume and investment, each from 60 to 140 % of what it is now. */
export function breakEvenCurves(base: Base): BreakEvenCurve[] {
  const now = { wage: base.money.wage.value, volume: base.plan, investment: base.line.investment.value }
  return (['wage', 'volume', 'investment'] as const).map((input) => ({
    input,
    points: FACTORS.map((factor) => ({ factor, value: now[input] * factor, paybackMonths: monthsOf(moved(base, input, factor)) })),
  }))
}

/** Where the payback is just the hurdle. */
export function breakEven(base: Base, hurdleMonths: number): BreakEven {
  const { line, plan, money } = base
  const annual = annualOf(base)
  const needed = (12 * line.investment.value) / hurdleMonths
  // what is saved grows with the wage in a straight line
  const perWage = (annual - annualOf(moved(base, 'wage', 0))) / money.wage.value
  const wage = perWage > 0 ? money.wage.value + (needed - annual) / perWage : null
  const volume = crossing((factor) => annualOf(moved(base, 'volume', factor)) - needed)
  return {
    wage: wage === null || wage < 0 ? null : { value: wage, now: money.wage.value },
    volume: volume === null ? null : { value: volume * plan, now: plan },
    investment: annual > 0 ? { value: (annual * hurdleMonths) / 12, now: line.investment.value } : null,
  }
}

/** Where a function that grows crosses 0 within the volumes looked at; null: nowhere. */
function crossing(of: (factor: number) => number): number | null {
  let low = 1 / VOLUME_MOST
  let high = VOLUME_MOST
  if (of(low) > 0 || of(high) < 0) return null
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2
    if (of(middle) < 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}
