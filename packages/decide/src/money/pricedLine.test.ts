import { describe, expect, test } from 'vitest'
import { money, pricedLine, sure } from '../../../../tests/helpers/pricedLine.ts'
import { minutesOf, type PricedLine, savingsOf, worthOf } from './pricedLine.ts'

const line = (over: Partial<PricedLine> = {}): PricedLine => pricedLine('line', [300, 340], { investment: sure(410_000), ...over })

test('minutes come of the shifts, and money of the minutes', () => {
  expect(minutesOf(line(), 320)).toEqual([28.125, 0])
  const savings = savingsOf(line(), line({ runningCost: sure(12_000) }), 33.45, 0, money)
  // the worked payback: 66.9 min a day, 104 949 a year
  expect(Math.abs(savings.annual / 104_949 - 1)).toBeLessThan(0.001)
  expect(worthOf(line(), savings, money).paybackMonths).toBeCloseTo(46.9, 1)
})

test('no more overtime is saved than is worked', () => {
  expect(savingsOf(line(), line(), 33.45, 0, { ...money, overtimeWorked: 10 }).minutesPerDay).toBe(20)
})

describe('what cannot be reckoned is refused by name', () => {
  test('one shift', () =>
    expect(() => minutesOf(line({ units: [300] }), 320)).toThrow('"line" has 1 simulated shifts: money needs at least 2'))
  test('a line that makes nothing', () => expect(() => minutesOf(line({ units: [0, 0] }), 320)).toThrow('"line" makes nothing'))
})
