import { describe, expect, test } from 'vitest'
import { money, pricedLine as line, sure } from '../../../../tests/helpers/pricedLine.ts'
import { payback } from './payback.ts'
import type { PricedLine } from './pricedLine.ts'

/** 200 shifts whose output goes up and down by a known wave around a mean: no chance, so that sums can be made by hand. */
const wave = (level: number, size: number): number[] =>
  Array.from({ length: 200 }, (_, world) => level + size * Math.cos((world * Math.PI) / 100))
const today = line('push line', wave(297, 12), { exchangeSeconds: 84.4 })
const loop = line('loop', wave(332, 12), { exchangeSeconds: 75.4, investment: sure(410_000), runningCost: sure(12_000) })

test('overtime is that of each shift, in the same worlds, and money that of the worked payback', () => {
  const { alternatives, overtimeToday } = payback(today, [loop], 320, money, { seed: '1' })
  const [of] = alternatives
  // no shift of today reaches 320: the mean shortfall over the mean rate
  expect(overtimeToday).toBeCloseTo(23 / (297 / 450), 9)
  const short = loop.units.map((made) => Math.max(0, 320 - made)).reduce((sum, one) => sum + one, 0) / 200 / (332 / 450)
  expect(of!.overtimeAfter).toBeCloseTo(short, 9)
  expect(of!.saved.mean).toBeCloseTo(overtimeToday - short, 9)
  const gross = ((2 * of!.saved.mean) / 60) * 8 * 38 * 1.5 * 230
  expect(of!.savings.annual).toBeCloseTo(gross - 12_000, 6)
  expect(of!.worth.paybackMonths).toBeCloseTo((12 * 410_000) / (gross - 12_000), 9)
  expect(of!.withinHurdle).toBe(false)
})

test('seconds × units stand beside it, and are more', () => {
  const [of] = payback(today, [loop], 320, money, { seed: '1' }).alternatives
  expect(of!.naive!.saving.minutesPerDay).toBeCloseTo(96, 9)
  expect(of!.naive!.worth.paybackMonths!.toFixed(1)).toBe('31.6')
  expect(of!.worth.paybackMonths!).toBeGreaterThan(of!.naive!.worth.paybackMonths!)
})

test('seconds saved where they do not limit the line save nothing', () => {
  const same = line('quicker elsewhere', today.units, { investment: sure(10_000) })
  const [of] = payback(today, [same], 320, money, { seed: '1' }).alternatives
  expect([of!.savings.annual, of!.worth.paybackMonths, of!.spread.neverShare]).toEqual([0, null, 1])
  expect(of!.naive).toBeNull()
})

describe('how far it may be off', () => {
  const spreadOf = (over: Partial<PricedLine> = {}, seed = '1') =>
    payback(today, [{ ...loop, ...over }], 320, money, { seed }).alternatives[0]!.spread
  test('the mean lies within, and the same seed draws the same', () => {
    const { paybackMonths } = payback(today, [loop], 320, money, { seed: '1' }).alternatives[0]!.worth
    const spread = spreadOf()
    expect(spread.paybackMonths!.p10).toBeLessThan(paybackMonths!)
    expect(spread.paybackMonths!.p90).toBeGreaterThan(paybackMonths!)
    expect(spreadOf()).toEqual(spread)
    expect(spreadOf({}, '2')).not.toEqual(spread)
  })
  test('a quote within ± 20 % widens it', () => {
    const width = ({ p10, p90 }: { p10: number; p90: number }): number => p90 - p10
    expect(width(spreadOf({ investment: { value: 410_000, doubt: 0.2 } }).paybackMonths!)).toBeGreaterThan(
      2 * width(spreadOf().paybackMonths!),
    )
  })
  test('shifts that do not differ leave none', () => {
    const flat = payback(line('now', Array(20).fill(300)), [line('new', Array(20).fill(330), { investment: sure(1000) })], 320, money, {
      seed: '1',
    })
    const { annual } = flat.alternatives[0]!.spread
    expect(annual.p90 / annual.p10).toBeCloseTo(1, 9)
  })
})

describe('what must be the same worlds', () => {
  test('is refused where it is not', () =>
    expect(() => payback(today, [line('short', [300, 300])], 320, money, { seed: '1' })).toThrow(
      '"short" has 2 simulated shifts and "push line" 200: they must be the same worlds',
    ))
})
