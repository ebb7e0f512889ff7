import { describe, expect, test } from 'vitest'
import { projectWorth } from './cashFlow.ts'
import { annualSavings } from './savings.ts'

const rates = { wage: 38, overtimeFactor: 1.5, daysPerYear: 230, shiftsPerDay: 2, paidHours: 7.5 }
const use = (overtimeMinutes: number, runningCost = 0, crew = 8) => ({ crew, overtimeMinutes, runningCost })

// A worked example of the trade, invented money, computed apart from this program and rounded as printed:
// crew 8, 38 an hour, factor 1.5, 230 days, two shifts, 12 000 a year to run, 410 000 to buy, 7 years at 10 %.
describe('the worked payback: minutes in, months out', () => {
  const of = (minutesPerDay: number) => {
    const saved = annualSavings(use(minutesPerDay / 2), use(0, 12_000), rates)
    return { saved, worth: projectWorth({ investment: 410_000, annual: saved.annual, years: 7, interest: 0.1, salvage: 0 }) }
  }
  test.each([
    {
      name: 'seconds × units',
      minutes: 96,
      hours: 12.8,
      gross: 167_808,
      annual: 155_808,
      months: 31.6,
      years: 3.2,
      npv: 348_500,
      irr: 0.328,
    },
    { name: 'simulated', minutes: 66.9, hours: 8.9, gross: 116_949, annual: 104_949, months: 46.9, years: 5.2, npv: 100_900, irr: 0.171 },
  ])('$name', ({ minutes, hours, gross, annual, months, years, npv, irr }) => {
    const { saved, worth } = of(minutes)
    const near = (is: number, shouldBe: number) => expect(Math.abs(is / shouldBe - 1)).toBeLessThan(0.001)
    expect(saved.labourHoursPerDay.toFixed(1)).toBe(hours.toFixed(1))
    near(saved.overtime, gross)
    near(saved.annual, annual)
    near(worth.netPresentValue, npv)
    expect(worth.paybackMonths!.toFixed(1)).toBe(months.toFixed(1))
    expect(Math.abs(worth.discountedYears! - years)).toBeLessThan(0.06)
    expect(Math.abs(worth.internalReturn.rate! - irr)).toBeLessThan(0.0006)
  })
})

test('a smaller crew saves its paid hours, and costs nothing of its overtime', () => {
  const { labour, overtime } = annualSavings(use(0), use(0, 0, 7), rates)
  expect([labour, overtime]).toEqual([7.5 * 2 * 38 * 230, 0])
})

test('overtime that nobody works cannot be saved', () => {
  expect(annualSavings(use(34), use(0), rates, 20).minutesPerDay).toBe(40)
  expect(annualSavings(use(34), use(30), rates, 20).minutesPerDay).toBe(8)
})

test('a line that takes more overtime than today costs it', () => {
  expect(annualSavings(use(5), use(12), rates).minutesPerDay).toBe(-14)
  expect(annualSavings(use(5), use(12), rates).annual).toBeLessThan(0)
  expect(annualSavings(use(5), use(12), rates, 3).minutesPerDay).toBe(-14)
})
