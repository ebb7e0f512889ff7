/** Money over years: what an investment is worth, and when it is back. Amounts in one currency; year t is paid at its end. */
import { MoneyError } from './moneyError.ts'

/**
 * Net present value: `Σ flows[t]/(1 + r)^t`, from t = 0.
 *
 * @param flows     money in (> 0) and out (< 0), at the start and at the end of each year
 * @param interest  share a year, > −1
 * @throws MoneyError  if the interest is not above −100 %
 * @see numpy-financial, documented examples of npv
 * @example netPresentValue([-100, 60, 72], 0.2) // => 0
 */
export function netPresentValue(flows: readonly number[], interest: number): number {
  if (!(interest > -1)) throw new MoneyError(`the interest must be above −100 %, not ${100 * interest} %`)
  return flows.reduceRight((sum, flow) => sum / (1 + interest) + flow, 0)
}

/** The interest at which a cash flow is worth nothing, or why there is none. */
export interface ReturnRate {
  /** share a year; null: there is none, or more than one */
  readonly rate: number | null
  readonly status: 'ok' | 'no sign change' | 'several sign changes' | 'beyond reach'
}

/** a rate outside is none that anybody signs for */
const RATE_LEAST = -0.999_999
const RATE_MOST = 1e6

/**
 * Internal rate of return: the interest at which the net present value is 0.
 *
 * Money that goes out and in more than once may have several such rates; then none is given.
 *
 * @param flows  money in (> 0) and out (< 0), at the start and at the end of each year
 * @see numpy-financial, documented examples of irr
 * @see Descartes' rule of signs: one change of sign, one rate
 * @example internalReturn([-100, 110]).rate // => 0.1
 */
export function internalReturn(flows: readonly number[]): ReturnRate {
  const signs = flows.filter((flow) => flow !== 0).map(Math.sign)
  const changes = signs.filter((sign, index) => index > 0 && sign !== signs[index - 1]).length
  if (changes === 0) return { rate: null, status: 'no sign change' }
  if (changes > 1) return { rate: null, status: 'several sign changes' }
  const outFirst = signs[0]! < 0
  const worth = (rate: number): number => (outFirst ? 1 : -1) * netPresentValue(flows, rate)
  let low = RATE_LEAST
  let high = 1
  while (worth(high) > 0 && high < RATE_MOST) high *= 2
  if (!(worth(low) > 0) || worth(high) > 0) return { rate: null, status: 'beyond reach' }
  // halved until the two are neighbours
  for (let step = 0; step < 200; step++) {
    const middle = low + (high - low) / 2
    if (middle <= low || middle >= high) break
    if (worth(middle) > 0) low = middle
    else high = middle
  }
  return { rate: Math.abs(worth(low)) <= Math.abs(worth(high)) ? low : high, status: 'ok' }
}

/**
 * Months until the savings have paid the investment back: `12 · I/annual`.
 *
 * @param investment  ≥ 0
 * @param annual      saved a year, the same in every year
 * @returns           null where nothing is saved; what costs nothing at the start and more every year never pays back
 * @example paybackMonths(410_000, 104_949) // => 46.879913100648885
 */
export function paybackMonths(investment: number, annual: number): number | null {
  if (investment === 0) return annual < 0 ? null : 0
  return annual > 0 ? (12 * investment) / annual : null
}

/**
 * Years until the discounted savings have paid the investment back; inside a year in a straight line.
 *
 * @param annual    saved at the end of each year, the same in every year
 * @param interest  share a year, ≥ 0
 * @returns         null where they never do
 * @example discountedPaybackYears(100, 60, 0.1) // => 1.9166666666666667
 */
export function discountedPaybackYears(investment: number, annual: number, interest: number): number | null {
  if (investment === 0) return annual < 0 ? null : 0
  if (!(annual > 0)) return null
  // all that the savings of all times are worth
  if (interest > 0 && annual / interest <= investment) return null
  let paid = 0
  for (let year = 1; ; year++) {
    const worth = annual / (1 + interest) ** year
    if (paid + worth >= investment) return year - 1 + (investment - paid) / worth
    if (year > YEARS_MOST) return null
    paid += worth
  }
}

/** nobody waits longer */
const YEARS_MOST = 1000

/** What a project pays out and in. */
export interface Project {
  /** paid at the start, ≥ 0 */
  readonly investment: number
  /** saved at the end of each year */
  readonly annual: number
  /** looked at, a whole number ≥ 1 */
  readonly years: number
  /** share a year, ≥ 0 */
  readonly interest: number
  /** got for it after the last year. */
  readonly salvage: number
}

/** What a project is worth. */
export interface Worth {
  /** months; null: never */
  readonly paybackMonths: number | null
  /** years; null: never */
  readonly discountedYears: number | null
  readonly netPresentValue: number
  readonly internalReturn: ReturnRate
}

/**
 * Payback, discounted payback, net present value and internal rate of return of one project.
 *
 * @throws MoneyError  if the investment is below 0, or the years are no whole number ≥ 1
 * @example projectWorth({ investment: 410_000, annual: 104_949, years: 7, interest: 0.1, salvage: 0 }).paybackMonths // => 46.879913100648885
 */
export function projectWorth({ investment, annual, years, interest, salvage }: Project): Worth {
  if (!(investment >= 0)) throw new MoneyError(`an investment is 0 or more, not ${investment}`)
  if (!Number.isInteger(years) || years < 1) throw new MoneyError(`the years looked at are a whole number from 1 on, not ${years}`)
  const flows = [-investment, ...Array.from({ length: years }, (_, year) => annual + (year === years - 1 ? salvage : 0))]
  return {
    paybackMonths: paybackMonths(investment, annual),
    discountedYears: discountedPaybackYears(investment, annual, interest),
    netPresentValue: netPresentValue(flows, interest),
    internalReturn: internalReturn(flows),
  }
}
