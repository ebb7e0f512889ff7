import { describe, expect, test } from 'vitest'
import { mean, minutesOf, type MoneyInputs, type PricedLine, savingsOf, worthOf } from './pricedLine.ts'

const sure = (value: number) => ({ value, doubt: 0 })
const line = (over: Partial<PricedLine> = {}): PricedLine => ({
  name: 'line',
  units: [300, 340],
  netSeconds: 27_000,
  exchangeSeconds: null,
  crew: 8,
  investment: sure(410_000),
  runningCost: sure(0),
  salvage: 0,
  ...over,
})
const money: MoneyInputs = {
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

test('minutes come of the shifts, and money of the minutes', () => {
  expect(minutesOf(line(), 320)).toEqual([28.125, 0])
  const savings = savingsOf(line(), line({ runningCost: sure(12_000) }), 33.45, 0, money)
  // the worked payback: 66.9 min a day, 104 949 a year
  expect(Math.abs(savings.annual / 104_949 - 1)).toBeLessThan(0.001)
  expect(worthOf(line(), savings, money).paybackMonths).toBeCloseTo(46.9, 1)
  expect(mean([1, 2, 6])).toBe(3)
})

test('no more overtime is saved than is worked', () => {
  expect(savingsOf(line(), line(), 33.45, 0, { ...money, overtimeWorked: 10 }).minutesPerDay).toBe(20)
})

describe('what cannot be reckoned is refused by name', () => {
  test('one shift', () =>
    expect(() => minutesOf(line({ units: [300] }), 320)).toThrow('"line" has 1 simulated shifts: money needs at least 2'))
  test('a line that makes nothing', () => expect(() => minutesOf(line({ units: [0, 0] }), 320)).toThrow('"line" makes nothing'))
})
