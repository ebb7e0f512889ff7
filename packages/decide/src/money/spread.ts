/** How far money may be off: years drawn from the simulated shifts, wages and quotes within their doubt. */
import { meanOf, sampleQuantile, stream } from '@loopwright/stats'
import { type Base, type Doubted, savingsOf, worthOf } from './pricedLine.ts'

/** Nine of ten and one of ten of the draws lie beyond the ends. */
export interface Range {
  readonly p10: number
  readonly p50: number
  readonly p90: number
}

/** How far the money may be off. */
export interface MoneySpread {
  readonly draws: number
  readonly annual: Range
  readonly netPresentValue: Range
  /** months; null where more than one of ten draws never pays back */
  readonly paybackMonths: Range | null
  /** share of the draws that pay back within the hurdle, 0 … 1 */
  readonly withinHurdleShare: number
  /** share of the draws that never pay back, 0 … 1 */
  readonly neverShare: number
  /** share a year; null where more than one of ten draws has none */
  readonly internalReturn: Range | null
}

const DRAWS = 500

/**
 * Draws of the money: each takes as many worlds as there are, again and again, which is the doubt of the mean; then the shifts of each year from these,
 * which is how much years differ; then wage, investment and running cost within their doubt.
 *
 * @param before  minutes of overtime of each shift today
 * @param after   of the same worlds
 */
export function moneySpread(before: readonly number[], after: readonly number[], base: Base, seed: string): MoneySpread {
  const { today, line, money } = base
  const draw = stream(seed, 0, `bootstrap/payback/${line.name}`)
  const worlds = before.length
  const shifts = Math.max(1, Math.round(money.daysPerYear * money.shiftsPerDay * money.years))
  const within = ({ value, doubt }: Doubted): Doubted => ({ value: value * (1 + doubt * (2 * draw() - 1)), doubt: 0 })
  const drawn = Array.from({ length: DRAWS }, () => {
    const known = Array.from({ length: worlds }, () => Math.floor(draw() * worlds))
    let minutesBefore = 0
    let minutesAfter = 0
    for (let shift = 0; shift < shifts; shift++) {
      const world = known[Math.floor(draw() * worlds)]!
      minutesBefore += before[world]!
      minutesAfter += after[world]!
    }
    const priced = { ...line, investment: within(line.investment), runningCost: within(line.runningCost) }
    const nowPriced = { ...today, runningCost: within(today.runningCost) }
    const rates = { ...money, wage: within(money.wage) }
    const savings = savingsOf(nowPriced, priced, minutesBefore / shifts, minutesAfter / shifts, rates)
    return { annual: savings.annual, ...worthOf(priced, savings, rates) }
  })
  const months = drawn.map(({ paybackMonths }) => paybackMonths)
  return {
    draws: DRAWS,
    annual: range(drawn.map(({ annual }) => annual)),
    netPresentValue: range(drawn.map(({ netPresentValue }) => netPresentValue)),
    paybackMonths: rangeOfMost(months, 'high'),
    withinHurdleShare: meanOf(months.map((each) => (each !== null && each <= money.hurdleMonths ? 1 : 0))),
    neverShare: meanOf(months.map((each) => (each === null ? 1 : 0))),
    internalReturn: rangeOfMost(
      drawn.map(({ internalReturn }) => internalReturn.rate),
      'low',
    ),
  }
}

/** Type 7. @param values  at least one */
export function range(values: readonly number[]): Range {
  return { p10: sampleQuantile(values, 0.1), p50: sampleQuantile(values, 0.5), p90: sampleQuantile(values, 0.9) }
}

/** Draws without a value lie beyond all others on one side; too many of them leave no range. */
function rangeOfMost(values: readonly (number | null)[], side: 'low' | 'high'): Range | null {
  const known = values.filter((value) => value !== null)
  if (values.length - known.length > values.length / 10 - 1) return known.length === values.length ? range(known) : null
  const [least, most] = [Math.min(...known), Math.max(...known)]
  return range(values.map((value) => value ?? (side === 'high' ? most : least)))
}
