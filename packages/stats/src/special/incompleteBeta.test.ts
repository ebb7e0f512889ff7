import { expect, test } from 'vitest'
import { betaTails, lnBeta } from './incompleteBeta.ts'

test('with one parameter 1 it is a power', () => {
  for (const x of [1e-9, 0.1, 0.5, 0.9]) {
    for (const a of [0.2, 1, 3, 20]) {
      expect(Math.abs(betaTails(a, 1, x).lower / x ** a - 1)).toBeLessThan(1e-12)
      expect(Math.abs(betaTails(1, a, x).upper / (1 - x) ** a - 1)).toBeLessThan(1e-12)
    }
  }
})

test('the tails change places with the parameters', () => {
  const one = betaTails(2.5, 7, 0.3)
  const other = betaTails(7, 2.5, 0.7, 0.3)
  expect(one.lower).toBeCloseTo(other.upper, 14)
  expect(one.upper).toBeCloseTo(other.lower, 14)
})

test('1 − x is taken as it is told, where subtracting would lose it', () => {
  expect(Math.abs(betaTails(1, 2, 1, 1e-20).upper / 1e-40 - 1)).toBeLessThan(1e-12)
})

test('ends of the range, and ln B', () => {
  expect([betaTails(2, 3, 0), betaTails(2, 3, 1)]).toEqual([
    { lower: 0, upper: 1 },
    { lower: 1, upper: 0 },
  ])
  expect(lnBeta(3, 4)).toBeCloseTo(-Math.log(60), 13)
})

test('arguments out of range are refused', () => {
  expect(() => betaTails(1, 1, 1.5)).toThrow('x is 1.5')
  expect(() => betaTails(-1, 1, 0.5)).toThrow('a is -1')
  expect(() => betaTails(1, 0, 0.5)).toThrow('b is 0')
})
