import fc from 'fast-check'
import { irr, nper, npv, pv } from 'financial'
import { describe, expect, test } from 'vitest'
import { discountedPaybackYears, internalReturn, netPresentValue, paybackMonths, projectWorth } from './cashFlow.ts'
import { MoneyError } from './moneyError.ts'

describe('the examples that numpy-financial documents', () => {
  test('npv(0.08, …): 40 000 out, 5 000, 8 000, 12 000, 30 000 in (value from memory of its documentation)', () => {
    expect(netPresentValue([-40_000, 5_000, 8_000, 12_000, 30_000], 0.08)).toBeCloseTo(3_065.22267, 5)
  })
  test.each([
    // numpy-financial 1.0.0, first page; numpy 1.3 and 1.12, numpy.irr
    [[-250_000, 100_000, 150_000, 200_000, 250_000, 300_000], 0.567_230_334_435_853_6, 14],
    [[-100, 39, 59, 55, 20], 0.280_948_421_159_961_1, 14],
    [[-100, 0, 0, 74], -0.0955, 4],
  ])('irr(%j)', (flows, rate, digits) => {
    expect(internalReturn(flows).rate).toBeCloseTo(rate, digits)
  })
  test('where it gives one of several rates, none is given here', () => {
    // numpy.irr gives −0.0833 for [-100, 100, 0, -7]
    expect(internalReturn([-100, 100, 0, -7])).toEqual({ rate: null, status: 'several sign changes' })
  })
})

test('a rate is one at which nothing is won', () => {
  const money = fc.integer({ min: 1, max: 1_000_000 })
  fc.assert(
    fc.property(money, fc.array(money, { minLength: 1, maxLength: 20 }), (out, back) => {
      const flows = [-out, ...back]
      const { rate, status } = internalReturn(flows)
      if (status === 'beyond reach') return
      const scale = back.reduce((sum, flow, year) => sum + flow / (1 + rate!) ** (year + 1), 0)
      expect(Math.abs(netPresentValue(flows, rate!)) / (out + scale)).toBeLessThan(1e-9)
    }),
    { seed: 1, numRuns: 500 },
  )
})

test('money that only comes in, or only goes out, has no rate', () => {
  expect(internalReturn([100, 100]).status).toBe('no sign change')
  expect(internalReturn([-100, 0]).status).toBe('no sign change')
})

describe('payback', () => {
  test('nothing saved is never back; nothing spent is back at once', () => {
    expect([paybackMonths(100, 0), paybackMonths(100, -5), paybackMonths(0, 0)]).toEqual([null, null, 0])
    expect([discountedPaybackYears(100, 0, 0.1), discountedPaybackYears(0, 0, 0.1)]).toEqual([null, 0])
  })
  test('savings whose worth for ever is below the investment never pay it back', () => {
    expect(discountedPaybackYears(1000, 100, 0.1)).toBeNull()
    expect(discountedPaybackYears(990, 100, 0.1)).toBeGreaterThan(40)
  })
  test('without interest it is the plain payback', () => {
    expect(discountedPaybackYears(250, 100, 0)).toBe(2.5)
  })
  test('at the discounted payback the net present value of whole years is 0', () => {
    // 100 at 10 %: 90.909 + 82.645 = 173.554 after two years
    expect(discountedPaybackYears(100 / 1.1 + 100 / 1.21, 100, 0.1)).toBeCloseTo(2, 12)
  })
})

describe('a project', () => {
  const project = { investment: 410_000, annual: 104_949, years: 7, interest: 0.1, salvage: 0 }
  test('what is got for it at the end is worth its discount', () => {
    const more = projectWorth({ ...project, salvage: 50_000 }).netPresentValue - projectWorth(project).netPresentValue
    expect(more).toBeCloseTo(50_000 / 1.1 ** 7, 8)
  })
  test('what cannot be is refused', () => {
    expect(() => projectWorth({ ...project, years: 2.5 })).toThrow(MoneyError)
    expect(() => projectWorth({ ...project, investment: -1 })).toThrow('an investment is 0 or more, not -1')
    expect(() => netPresentValue([1], -1)).toThrow('the interest must be above −100 %')
  })
})

test('what takes no investment and costs more every year never pays back', () => {
  expect([paybackMonths(0, -800), discountedPaybackYears(0, -800, 0.1)]).toEqual([null, null])
  expect([paybackMonths(0, 0), paybackMonths(0, 500), discountedPaybackYears(0, 500, 0.1)]).toEqual([0, 0, 0])
})

test('500 random projects: worth, return and payback as a port of numpy-financial reckons them (npm: financial 0.2.4)', () => {
  const project = fc.record({
    investment: fc.integer({ min: 1000, max: 2_000_000 }),
    share: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
    years: fc.integer({ min: 1, max: 25 }),
    interest: fc.double({ min: 0.001, max: 0.3, noNaN: true }),
    salvage: fc.integer({ min: 0, max: 200_000 }),
  })
  let returns = 0
  let paid = 0
  fc.assert(
    fc.property(project, ({ share, ...of }) => {
      const { investment, years, interest, salvage } = of
      const annual = share * investment
      const worth = projectWorth({ ...of, annual })
      const flows = [-investment, ...Array.from({ length: years }, (_, year) => annual + (year === years - 1 ? salvage : 0))]
      expect(Math.abs(worth.netPresentValue - npv(interest, flows)) / investment).toBeLessThan(1e-12)
      expect(worth.paybackMonths! / (12 * nper(0, annual, -investment))).toBeCloseTo(1, 12)

      // it goes by tangents from 10 % on, which may lead away, or to a root below −100 %
      const rate = irr(flows, 0.1, 1e-12, 1000)
      if (Number.isFinite(rate) && rate > -1) {
        returns++
        expect(worth.internalReturn.rate).toBeCloseTo(rate, 9)
      }

      // the year in which it is back, and the way through that year in a straight line
      const periods = nper(interest, annual, -investment)
      expect(worth.discountedYears === null).toBe(!Number.isFinite(periods))
      if (worth.discountedYears === null) return
      paid++
      const year = Math.floor(periods)
      const before = -pv(interest, year, annual)
      expect(worth.discountedYears).toBeCloseTo(year + (investment - before) / (-pv(interest, year + 1, annual) - before), 8)
    }),
    { seed: 1, numRuns: 500 },
  )
  expect(returns).toBeGreaterThan(450)
  expect(paid).toBeGreaterThan(400)
})
