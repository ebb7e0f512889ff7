import { meanOf } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { money, pricedLine, sure } from '../../../../tests/helpers/pricedLine.ts'
import { breakEven, breakEvenCurves } from './breakEven.ts'
import { paybackMonths } from './cashFlow.ts'
import { type Base, minutesOf, savingsOf } from './pricedLine.ts'

const base: Base = {
  today: pricedLine('now', [290, 297, 305]),
  line: pricedLine('loop', [318, 333, 340], { investment: sure(410_000), runningCost: sure(12_000) }),
  plan: 320,
  money,
}

const months = ({ today, line, plan, money }: Base): number =>
  paybackMonths(line.investment.value, savingsOf(today, line, meanOf(minutesOf(today, plan)), meanOf(minutesOf(line, plan)), money).annual)!

test('at each break-even the payback is just the hurdle', () => {
  const { wage, volume, investment } = breakEven(base, 24)
  expect(months({ ...base, money: { ...base.money, wage: sure(wage!.value) } })).toBeCloseTo(24, 6)
  expect(months({ ...base, plan: volume!.value })).toBeCloseTo(24, 6)
  expect(months({ ...base, line: { ...base.line, investment: sure(investment!.value) } })).toBeCloseTo(24, 9)
  expect([wage!.now, volume!.now, investment!.now]).toEqual([38, 320, 410_000])
})

test('what saves nothing has no break-even', () => {
  const useless = { ...base, line: { ...base.today, name: 'same', investment: sure(1000) } }
  expect(breakEven(useless, 24)).toEqual({ wage: null, volume: null, investment: null })
})

test('curves go through the payback of today’s inputs, up with the investment, down with wage and volume', () => {
  for (const { input, points } of breakEvenCurves(base)) {
    expect(points.map(({ factor }) => factor)).toEqual([...new Set(points.map(({ factor }) => factor))].sort())
    const now = points.find(({ factor }) => factor === 1)!
    expect(now.paybackMonths).toBeCloseTo(months(base), 9)
    const known = points.map(({ paybackMonths: each }) => each ?? Number.POSITIVE_INFINITY)
    const rising = known.every((each, index) => index === 0 || each >= known[index - 1]!)
    expect(rising).toBe(input === 'investment')
  }
})
