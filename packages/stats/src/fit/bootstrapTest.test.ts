import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { bootstrapTest } from './bootstrapTest.ts'
import { fitDuration } from './durationFit.ts'
import { lognormalFit } from './lognormalFit.ts'

test('p is even where the curve is true', () => {
  // 500 sets of 20 lognormal values, 39 samples each: chi-square on 10 equal cells, 9 degrees of freedom, 43.4 cuts 1.8e-6; with 39 samples p is even on 1/40 … 1
  const next = stream('7', 0, 'bootstrap/even')
  const cells = new Float64Array(10)
  for (let s = 0; s < 500; s++) {
    const values = Array.from({ length: 20 }, () => lognormalFit.quantile([3, 0.25], next()))
    const { pAndersonDarling } = bootstrapTest(values, fitDuration(values, 'lognormal'), next, 39)
    cells[Math.ceil(pAndersonDarling * 10 - 1e-9) - 1]!++
  }
  const chiSquare = cells.reduce((sum, count) => sum + (count - 50) ** 2 / 50, 0)
  expect(chiSquare).toBeLessThan(43.4)
})

test('two variants mixed do not pass for one curve', () => {
  const next = stream('7', 0, 'bootstrap/mixed')
  const values = Array.from({ length: 60 }, (_, i) => lognormalFit.quantile([i % 2 === 0 ? 2.5 : 3.5, 0.08], next()))
  for (const family of ['lognormal', 'gamma', 'weibull'] as const) {
    expect(bootstrapTest(values, fitDuration(values, family), next, 99).pAndersonDarling).toBeLessThan(0.05)
  }
})

test('a shift is kept if given, estimated anew if estimated; failed refits are told', () => {
  const next = stream('7', 0, 'bootstrap/shift')
  const values = [21.4, 19.8, 24.6, 20.3, 22.7, 18.9, 27.5, 20.9, 19.5, 23.1, 21.8, 25.9, 20.1, 18.6, 22.2, 30.4]
  const given = bootstrapTest(values, fitDuration(values, 'lognormal', { from: 'given', seconds: 17 }), next, 99)
  expect(given.failedRefits).toBe(0)
  const few = [10, 11, 12, 13.5]
  const estimated = bootstrapTest(few, fitDuration(few, 'lognormal', { from: 'data' }), next, 99)
  expect(estimated.failedRefits).toBeGreaterThan(0)
  expect(estimated.exceedAndersonDarling).toBeGreaterThanOrEqual(estimated.failedRefits)
})

test('a curve that excludes a value has the smallest p there is', () => {
  const fit = fitDuration([100, 101, 102, 99], 'gamma')
  const got = bootstrapTest([100, 1e6, 101], fit, stream('7', 0, 'bootstrap/excluded'), 19)
  expect(got.pAndersonDarling).toBe(1 / 20)
})

test('refused', () => {
  expect(() => bootstrapTest([3, 4, 5], fitDuration([3, 4, 5], 'gamma'), stream('7', 0, 'x'), 5)).toThrow('The number of samples is 5')
})
