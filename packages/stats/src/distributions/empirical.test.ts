import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution, distributionMean } from './distributions.ts'
import { quantile } from './samplerTable.ts'

const TIMES = [21.4, 19.8, 24.6, 20.3, 22.7, 18.9, 27.5, 20.9, 19.5, 23.1, 21.8, 25.9, 20.1, 18.6, 22.2]

describe('empirical', () => {
  test.each<[Distribution, { smooth: boolean }]>([
    [{ kind: 'empirical', values: TIMES, interpolate: false }, { smooth: false }],
    [{ kind: 'empirical', values: TIMES, interpolate: true }, { smooth: false }],
    [{ kind: 'empirical', values: [7, 7, 9], interpolate: true }, { smooth: false }],
    [{ kind: 'empirical', values: [7], interpolate: true }, { smooth: true }],
  ])('%j keeps the contract', (d, options) => expect(distributionContract(d, options)).toEqual([]))

  test.each<[unknown, string[]]>([
    [{ kind: 'empirical', values: [], interpolate: false }, ['values is empty; give at least one value']],
    [{ kind: 'empirical', values: [3, -2], interpolate: false }, ['values holds -2 in row 2; each must be 0 or more']],
  ])('%j is told why not', (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons))

  test('interpolating lowers the mean of skewed data', () => {
    const skewed = [1, 1.1, 1.2, 1.3, 1.5, 2, 9]
    const resampled = distributionMean({ kind: 'empirical', values: skewed, interpolate: false })
    expect(distributionMean({ kind: 'empirical', values: skewed, interpolate: true })).toBeLessThan(resampled)
  })
  test('it never goes beyond the values seen', () => {
    for (const interpolate of [true, false]) {
      const d: Distribution = { kind: 'empirical', values: TIMES, interpolate }
      expect(quantile(d, 1 - 2 ** -53)).toBeLessThanOrEqual(27.5)
      expect(quantile(d, 2 ** -54)).toBe(18.6)
    }
  })
})
