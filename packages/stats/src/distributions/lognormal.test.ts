import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution } from './distributions.ts'
import { quantile } from './samplerTable.ts'

describe('lognormal', () => {
  test.each<[Distribution, { smooth: boolean }]>([
    [{ kind: 'lognormal', mean: 20, cv: 0.15 }, { smooth: true }],
    [{ kind: 'lognormal', mean: 7.5, cv: 0.8 }, { smooth: true }],
  ])('%j keeps the contract', (d, options) => expect(distributionContract(d, options)).toEqual([]))

  test.each<[unknown, string[]]>([
    [{ kind: 'lognormal', mean: 0, cv: -1 }, ['mean is 0; it must be above 0', 'cv is -1; it must be above 0']],
  ])('%j is told why not', (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons))

  test('its median lies below its mean by the root of 1 + cv²', () => {
    expect(quantile({ kind: 'lognormal', mean: 20, cv: 0.75 }, 0.5)).toBeCloseTo(16, 13)
  })
})
