/** Money and lines with invented prices, for tests of paybacks. */
import type { Doubted, MoneyInputs, PricedLine } from '@loopwright/decide'

/** A number without doubt. */
export const sure = (value: number): Doubted => ({ value, doubt: 0 })

export const money: MoneyInputs = {
  wage: sure(38),
  overtimeFactor: 1.5,
  daysPerYear: 230,
  shiftsPerDay: 2,
  paidHours: 7.5,
  years: 7,
  interest: 0.1,
  hurdleMonths: 24,
  overtimeWorked: null,
}

/** A crew of 8 on shifts of 7.5 h; it costs nothing unless said. */
export const pricedLine = (name: string, units: readonly number[], over: Partial<PricedLine> = {}): PricedLine => ({
  name,
  units,
  netSeconds: 27_000,
  exchangeSeconds: null,
  crew: 8,
  investment: sure(0),
  runningCost: sure(0),
  salvage: 0,
  ...over,
})
