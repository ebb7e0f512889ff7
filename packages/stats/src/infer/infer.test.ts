import { describe, expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { StatisticsError } from '../statisticsError.ts'
import { binomialEstimate } from './binomialEstimate.ts'
import { meanInterval } from './meanInterval.ts'
import { pairedDifference, pairedLowerLimit } from './pairedDifference.ts'
import { predictionInterval } from './predictionInterval.ts'
import { quantileEstimate, replicationsForQuantile } from './quantileEstimate.ts'

const codeOf = (make: () => unknown): string => {
  try {
    make()
  } catch (error) {
    if (error instanceof StatisticsError) return error.code
  }
  return 'no refusal'
}

describe('status', () => {
  test('of a mean', () => {
    expect(meanInterval([1, 2]).status).toBe('few replications')
    expect(meanInterval(Array.from({ length: 10 }, (_, i) => i)).status).toBe('ok')
    expect(meanInterval([0.1, 0.1, 0.1])).toMatchObject({ mean: 0.1, sd: 0, halfWidth: 0, low: 0.1, high: 0.1, status: 'no spread' })
    expect(predictionInterval([0.1, 0.1]).halfWidth).toBe(0)
  })
  test('of a quantile: 36 replications give P10 and P90 both limits', () => {
    const values = Array.from({ length: 36 }, (_, i) => i)
    expect(quantileEstimate(values, 0.1)).toMatchObject({ status: 'ok', low: 0, high: 7 })
    expect(quantileEstimate(values.slice(1), 0.1)).toMatchObject({ status: 'one limit', low: null, high: 8 })
    expect(quantileEstimate(values.slice(1), 0.9)).toMatchObject({ status: 'one limit', low: 28, high: null })
    expect(quantileEstimate([1, 2], 0.5)).toMatchObject({ status: 'no limit', low: null, high: null, coverage: 1 })
    expect([replicationsForQuantile(0.1), replicationsForQuantile(0.9), replicationsForQuantile(0.5)]).toEqual([36, 36, 6])
  })
  test('of a chance', () => {
    expect(binomialEstimate(3, 19).status).toBe('few')
    expect(binomialEstimate(20, 20)).toMatchObject({ status: 'every one', high: 1 })
    expect(binomialEstimate(0, 20)).toMatchObject({ status: 'none', low: 0 })
    expect(binomialEstimate(0, 20).high).toBeCloseTo(1 - binomialEstimate(20, 20).low, 14)
  })
  test('of a difference', () => {
    expect(pairedDifference([3, 5, 9], [2, 4, 8])).toMatchObject({
      status: 'always differs by the same',
      mean: 1,
      low: 1,
      high: 1,
      pairingGain: null,
    })
    // 0.3 − 0.2 and 0.2 − 0.1 differ by rounding alone
    expect(pairedDifference([0.3, 0.2, 0.7], [0.2, 0.1, 0.6]).status).toBe('always differs by the same')
    expect(pairedDifference([3, 5, 9, 4], [1, 2, 7, 1]).status).toBe('difference shown')
    expect(pairedDifference([1, 2, 7, 1], [3, 5, 9, 4]).status).toBe('difference shown')
    expect(pairedDifference([3, 5, 9, 4], [4, 4, 9, 5]).status).toBe('no difference shown')
    expect(pairedDifference([1, 2, 3], [3, 2, 1]).pairingGain).toBe(0.5)
    expect(pairedLowerLimit([2, 2, 2])).toMatchObject({ low: 2, status: 'no spread' })
  })
})

describe('refusals', () => {
  test('too little, no numbers, unequal lengths, impossible levels', () => {
    expect(codeOf(() => meanInterval([5]))).toBe('E_TOO_FEW')
    expect(() => meanInterval([5])).toThrow('Cannot give an interval from 1 replication: give at least 2.')
    expect(codeOf(() => meanInterval([5, Number.NaN]))).toBe('E_NOT_A_NUMBER')
    expect(codeOf(() => meanInterval([5, Infinity]))).toBe('E_NOT_A_NUMBER')
    expect(codeOf(() => meanInterval([5, 6], 1))).toBe('E_DOMAIN')
    expect(codeOf(() => predictionInterval([5, 6], 0.95, 0))).toBe('E_DOMAIN')
    expect(codeOf(() => predictionInterval([5], 0.95))).toBe('E_TOO_FEW')
    expect(codeOf(() => quantileEstimate([1], 0.5))).toBe('E_TOO_FEW')
    expect(codeOf(() => quantileEstimate([1, 2], 0))).toBe('E_DOMAIN')
    expect(codeOf(() => binomialEstimate(0, 0))).toBe('E_TOO_FEW')
    expect(codeOf(() => binomialEstimate(5, 4))).toBe('E_DOMAIN')
    expect(codeOf(() => binomialEstimate(1.5, 4))).toBe('E_DOMAIN')
    expect(codeOf(() => pairedDifference([1, 2], [1, 2, 3]))).toBe('E_UNEQUAL_LENGTH')
    expect(codeOf(() => pairedLowerLimit([1]))).toBe('E_TOO_FEW')
  })
})

describe('coverage on seeded samples', () => {
  // 10,000 samples of 10 normal values: the share that encloses the truth has standard error 0.0022; ±0.01 is 4.6 of them, false alarm 4e-6
  const samples = 10_000
  const next = stream('coverage', 0, 'normal')
  const sample = (n: number): number[] => Array.from({ length: n }, () => 50 + 4 * normalQuantile(next()))

  test('the interval of the mean encloses the mean in 95 of 100, a level of 0.90 does not', () => {
    const covered = (level: number): number => {
      let count = 0
      for (let s = 0; s < samples; s++) {
        const { low, high } = meanInterval(sample(10), level)
        if (low <= 50 && 50 <= high) count++
      }
      return count / samples
    }
    expect(Math.abs(covered(0.95) - 0.95)).toBeLessThan(0.01)
    expect(Math.abs(covered(0.9) - 0.95)).toBeGreaterThan(0.01)
  })
  test('the prediction interval encloses the next shift in 95 of 100', () => {
    let count = 0
    for (let s = 0; s < samples; s++) {
      const { low, high } = predictionInterval(sample(8), 0.95)
      const [shift] = sample(1)
      if (low <= shift! && shift! <= high) count++
    }
    expect(Math.abs(count / samples - 0.95)).toBeLessThan(0.01)
  })
  test('the limits of P10 enclose it as often as they say', () => {
    // 2,000 samples: 4.892 standard errors, false alarm 1e-6
    const truth = 50 + 4 * normalQuantile(0.1)
    let count = 0
    let coverage = 0
    for (let s = 0; s < 2000; s++) {
      const estimate = quantileEstimate(sample(50), 0.1)
      coverage = estimate.coverage
      if (estimate.low! <= truth && truth <= estimate.high!) count++
    }
    expect(Math.abs(count / 2000 - coverage)).toBeLessThan(4.892 * Math.sqrt((coverage * (1 - coverage)) / 2000))
  })
})
