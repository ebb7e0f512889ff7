import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution, distributionCdf, distributionMean, distributionVariance } from './distributions.ts'

describe('exponential', () => {
  test.each<[Distribution, { smooth: boolean }]>([[{ kind: 'exponential', mean: 3600 }, { smooth: true }]])(
    '%j keeps the contract',
    (d, options) => expect(distributionContract(d, options)).toEqual([]),
  )

  test.each<[unknown, string[]]>([[{ kind: 'exponential', mean: 0 }, ['mean is 0; it must be above 0']]])(
    '%j is told why not',
    (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons),
  )

  test('it does not age: what is left above a time is the same again', () => {
    const left: Distribution = { kind: 'limited', of: { kind: 'exponential', mean: 3 }, shift: 0, min: 2, max: null }
    expect(distributionMean(left)).toBeCloseTo(5, 12)
    expect(distributionVariance(left)).toBeCloseTo(9, 11)
    expect(distributionCdf(left, 2)).toBe(0)
  })
})
