import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution } from './distributions.ts'
import { quantile } from './samplerTable.ts'

describe('gamma', () => {
  test.each<[Distribution, { smooth: boolean }]>([
    [{ kind: 'gamma', mean: 20, cv: 0.2 }, { smooth: true }],
    [{ kind: 'gamma', mean: 7.5, cv: 1 }, { smooth: true }],
  ])('%j keeps the contract', (d, options) => expect(distributionContract(d, options)).toEqual([]))

  test.each<[unknown, string[]]>([[{ kind: 'gamma', mean: 5, cv: 0 }, ['cv is 0; it must be above 0']]])(
    '%j is told why not',
    (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons),
  )

  test('with cv 1 it is the exponential', () => {
    for (const u of [0.01, 0.5, 0.99]) {
      expect(quantile({ kind: 'gamma', mean: 7, cv: 1 }, u)).toBeCloseTo(quantile({ kind: 'exponential', mean: 7 }, u), 11)
    }
  })
})
