import { expect, test } from 'vitest'
import { binomialCdf } from './binomialCdf.ts'

test('it is the sum of its terms', () => {
  const [n, p] = [12, 0.3]
  let term = (1 - p) ** n
  let sum = 0
  for (let k = 0; k < n; k++) {
    sum += term
    expect(Math.abs(binomialCdf(k, n, p) / sum - 1)).toBeLessThan(1e-12)
    term *= ((n - k) / (k + 1)) * (p / (1 - p))
  }
})

test('ends of the range', () => {
  expect([binomialCdf(-1, 3, 0.5), binomialCdf(3, 3, 0.5), binomialCdf(1, 3, 0), binomialCdf(1, 3, 1), binomialCdf(0, 0, 0.5)]).toEqual([
    0, 1, 1, 0, 1,
  ])
})

test('arguments out of range are refused', () => {
  expect(() => binomialCdf(0.5, 3, 0.5)).toThrow('k is 0.5')
  expect(() => binomialCdf(1, 2.5, 0.5)).toThrow('n is 2.5')
  expect(() => binomialCdf(1, 3, 1.5)).toThrow('p is 1.5')
})
