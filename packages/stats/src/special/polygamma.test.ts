import { expect, test } from 'vitest'
import { digamma, lnMinusDigamma, trigamma, trigammaExcess } from './polygamma.ts'

test('both obey their recurrences', () => {
  for (const x of [0.01, 0.5, 1, 3.7, 9.99, 10, 1234.5]) {
    expect(digamma(x + 1) - 1 / x).toBeCloseTo(digamma(x), 11)
    expect(trigamma(x + 1) + 1 / (x * x)).toBeCloseTo(trigamma(x), 9)
  }
})

test('known values (Abramowitz & Stegun, Handbook of Mathematical Functions, 6.3.3 and 6.4, from memory)', () => {
  const euler = 0.5772156649015329
  expect(digamma(0.5)).toBeCloseTo(-euler - 2 * Math.LN2, 13)
  expect(trigamma(0.5)).toBeCloseTo(Math.PI ** 2 / 2, 13)
})

test('the differences to their leading terms, where subtracting keeps digits and where it does not', () => {
  for (const x of [0.3, 5, 12, 60]) {
    expect(lnMinusDigamma(x)).toBeCloseTo(Math.log(x) - digamma(x), 13)
    expect(trigammaExcess(x)).toBeCloseTo(trigamma(x) - 1 / x, 13)
  }
  expect(lnMinusDigamma(1e12) / (0.5e-12 + 1e-24 / 12)).toBeCloseTo(1, 14)
  expect(trigammaExcess(1e12) / (0.5e-24 + 1e-36 / 6)).toBeCloseTo(1, 14)
})

test('arguments out of range are refused', () => {
  expect(() => digamma(-1)).toThrow('digamma: x is -1')
  expect(() => trigamma(0)).toThrow('trigamma: x is 0')
})
