import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution } from './distributions.ts'
import { quantile } from './samplerTable.ts'

describe('weibull', () => {
  test.each<[Distribution, { smooth: boolean }]>([
    [{ kind: 'weibull', shape: 2.1, scale: 81.9 }, { smooth: true }],
    [{ kind: 'weibull', shape: 0.8, scale: 5 }, { smooth: true }],
  ])('%j keeps the contract', (d, options) => expect(distributionContract(d, options)).toEqual([]))

  test.each<[unknown, string[]]>([
    [{ kind: 'weibull', shape: 0, scale: 5 }, ['shape is 0; it must be above 0']],
    [{ kind: 'weibull', shape: 2 }, ['scale is undefined; it must be above 0']],
  ])('%j is told why not', (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons))

  test('with shape 1 it is the exponential', () => {
    expect(quantile({ kind: 'weibull', shape: 1, scale: 7 }, 0.3)).toBe(quantile({ kind: 'exponential', mean: 7 }, 0.3))
  })
})
