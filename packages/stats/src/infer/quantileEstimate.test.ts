import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { quantileEstimate, quantileRanks } from './quantileEstimate.ts'

const values = [...Array(36).keys()]

test('36 replications give P10 and P90 both limits', () => {
  expect(quantileEstimate(values, 0.1)).toMatchObject({ status: 'ok', low: 0, high: 7 })
  expect(quantileEstimate(values.slice(1), 0.1)).toMatchObject({ status: 'one limit', low: null, high: 8 })
  expect(quantileEstimate(values.slice(1), 0.9)).toMatchObject({ status: 'one limit', low: 28, high: null })
  expect(quantileEstimate([1, 2], 0.5)).toMatchObject({ status: 'no limit', low: null, high: null, coverage: 1 })
})

test('the ranks are the closest ones that keep the level', () => {
  for (const n of [6, 17, 40, 100, 333]) {
    for (const p of [0.1, 0.5, 0.9]) {
      const { lower, upper, coverage } = quantileRanks(n, p, 0.9)
      if (lower !== null && upper !== null) expect(coverage).toBeGreaterThanOrEqual(0.9)
    }
  }
})

test('the limits of P10 enclose it as often as they say', () => {
  // 2,000 samples of 50: 4.892 standard errors, false alarm 1e-6
  const next = stream('coverage', 0, 'quantile')
  let count = 0
  let coverage = 0
  for (let s = 0; s < 2000; s++) {
    const estimate = quantileEstimate(Array.from({ length: 50 }, next), 0.1)
    coverage = estimate.coverage
    if (estimate.low! <= 0.1 && 0.1 <= estimate.high!) count++
  }
  const se = Math.sqrt((coverage * (1 - coverage)) / 2000)
  expect(Math.abs(count / 2000 - coverage)).toBeLessThan(4.892 * se)
  // seen to fail: the limits of P10 do not enclose P15 as often
  expect(coverage - 0.9).toBeGreaterThan(4.892 * se)
})

test('refused', () => {
  expect(() => quantileEstimate([1], 0.5)).toThrow('Cannot give a quantile of shifts from 1 replication')
  expect(() => quantileEstimate([1, 2], 0)).toThrow('The share p is 0')
  expect(() => quantileRanks(0, 0.5, 0.95)).toThrow('The number of replications is 0')
})
