import { describe, expect, test } from 'vitest'
import { StatisticsError } from '../statisticsError.ts'
import { betaQuantile } from './betaQuantile.ts'
import { binomialCdf } from './binomialCdf.ts'
import { fQuantile } from './fQuantile.ts'
import { chiSquareQuantile, gammaQuantile } from './gammaQuantile.ts'
import { betaTails } from './incompleteBeta.ts'
import { gammaP, gammaQ } from './incompleteGamma.ts'
import { lnGamma } from './lnGamma.ts'
import { erfc, normalCdf } from './normal.ts'
import { normalQuantile } from './normalQuantile.ts'
import { digamma, trigamma } from './polygamma.ts'
import { tQuantile } from './tQuantile.ts'

const PROBABILITIES = [1e-300, 2 ** -54, 1e-8, 0.001, 0.3, 0.5, 0.500001, 0.9, 0.999, 1 - 1e-10, 1 - 2 ** -53]

describe('the inverse of each quantile gives the probability back, in the smaller tail', () => {
  test.each([0.01, 0.1, 0.39, 0.7, 1, 1.5, 3, 11, 44, 1000])('gamma, shape %d', (shape) => {
    for (const p of PROBABILITIES) {
      const x = gammaQuantile(p, shape)
      if (x < 1e-290) continue // below the smallest double: rounded to it or to 0
      const ratio = p > 0.5 ? gammaQ(shape, x) / (1 - p) : gammaP(shape, x) / p
      expect(Math.abs(ratio - 1)).toBeLessThan(5e-12)
    }
  })
  test.each([0.5, 1, 2.3, 7, 87, 500])('beta, a = %d', (a) => {
    for (const b of [0.5, 1, 2.3, 14, 300]) {
      for (const p of PROBABILITIES) {
        const { x, complement } = betaQuantile(p, a, b)
        if (Math.min(x, complement) < 1e-290) continue
        const tails = betaTails(a, b, x, complement)
        expect(Math.abs((p > 0.5 ? tails.upper / (1 - p) : tails.lower / p) - 1)).toBeLessThan(1e-10)
        expect(x + complement).toBeCloseTo(1, 14)
      }
    }
  })
  test('normal', () => {
    for (const p of PROBABILITIES) {
      const z = normalQuantile(p)
      expect(Math.abs((p > 0.5 ? normalCdf(-z) / (1 - p) : normalCdf(z) / p) - 1)).toBeLessThan(2e-12)
    }
  })
  test('t is odd, and F with one degree above is its square', () => {
    for (const df of [0.5, 1, 2, 9, 200]) {
      expect(tQuantile(0.1, df)).toBeCloseTo(-tQuantile(0.9, df), 12)
      expect(fQuantile(0.9, 1, df) / tQuantile(0.95, df) ** 2).toBeCloseTo(1, 9)
    }
    expect(tQuantile(0.975, 1e7)).toBe(normalQuantile(0.975))
    expect(tQuantile(0.975, 9_999_999)).toBeCloseTo(normalQuantile(0.975), 6)
  })
})

test('ends of the ranges', () => {
  expect([gammaP(3, 0), gammaQ(3, 0), gammaP(3, Infinity), gammaQ(3, Infinity)]).toEqual([0, 1, 1, 0])
  expect([betaTails(2, 3, 0).lower, betaTails(2, 3, 1).lower]).toEqual([0, 1])
  expect([binomialCdf(-1, 3, 0.5), binomialCdf(3, 3, 0.5), binomialCdf(1, 3, 0), binomialCdf(1, 3, 1)]).toEqual([0, 1, 1, 0])
  expect([erfc(0), erfc(-40), erfc(40)]).toEqual([1, 2, 0])
})

describe('arguments outside their range are refused with name and value', () => {
  test.each([
    () => lnGamma(0),
    () => lnGamma(Number.NaN),
    () => lnGamma(Infinity),
    () => digamma(-1),
    () => trigamma(0),
    () => gammaP(0, 1),
    () => gammaQ(1, -1),
    () => betaTails(1, 1, 1.5),
    () => betaTails(-1, 1, 0.5),
    () => normalQuantile(0),
    () => normalQuantile(1),
    () => gammaQuantile(1, 2),
    () => chiSquareQuantile(0.5, 0),
    () => betaQuantile(0.5, 0, 1),
    () => tQuantile(0.5, 0),
    () => tQuantile(Number.NaN, 5),
    () => tQuantile(1e-100, 0.1),
    () => fQuantile(0.5, 1, -1),
    () => binomialCdf(0.5, 3, 0.5),
    () => binomialCdf(1, 2.5, 0.5),
    () => binomialCdf(1, 3, 1.5),
  ])('%s', (call) => {
    expect(call).toThrow(StatisticsError)
    expect(call).toThrow(/is|of/)
  })
})
