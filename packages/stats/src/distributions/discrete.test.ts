import { describe, expect, test } from 'vitest'
import { cumulativeShares, shareIndexAt } from './discrete.ts'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution, distributionMean } from './distributions.ts'
import { quantile } from './samplerTable.ts'

describe('discrete', () => {
  test.each<[Distribution, { smooth: boolean }]>([
    [{ kind: 'discrete', values: [2, 5, 9], weights: [5, 3, 2] }, { smooth: false }],
    [{ kind: 'discrete', values: [3], weights: [0.1] }, { smooth: true }],
  ])('%j keeps the contract', (d, options) => expect(distributionContract(d, options)).toEqual([]))

  test.each<[unknown, string[]]>([
    [{ kind: 'discrete', values: [1, 2], weights: [1] }, ['there are 2 values and 1 weights; give one weight for each value']],
    [{ kind: 'discrete', values: [1, 2], weights: [1, 0] }, ['weights holds 0 in row 2; each must be above 0']],
    [{ kind: 'discrete', values: [1, 2] }, ['weights is empty; give one weight for each value']],
  ])('%j is told why not', (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons))

  test('it is taken in its listed order, under limits in the order of its values', () => {
    const listed: Distribution = { kind: 'discrete', values: [9, 2, 5], weights: [2, 5, 3] }
    expect([0.1, 0.2, 0.69, 0.7].map((u) => quantile(listed, u))).toEqual([9, 2, 2, 5])
    const limited: Distribution = { kind: 'limited', of: listed, shift: 0, min: 4, max: null }
    expect([0.1, 0.59, 0.61, 0.9].map((u) => quantile(limited, u))).toEqual([5, 5, 9, 9])
    expect(distributionMean(limited)).toBeCloseTo((5 * 3 + 9 * 2) / 5, 12)
  })
  test('the last share catches rounding', () => {
    expect(shareIndexAt(Float64Array.of(0.1, 0.1 + 0.2), 0, 2, Float64Array.of(1), 0)).toBe(1)
    expect(shareIndexAt(cumulativeShares([1, 1]), 0, 2, Float64Array.of(1 - 2 ** -53), 0)).toBe(1)
    expect([...cumulativeShares([1, 2, 3])]).toEqual([1, 3, 6])
  })
})
