import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution } from './distributions.ts'
import { quantile } from './samplerTable.ts'

describe('pert', () => {
  test.each<[Distribution, { smooth: boolean }]>([
    [{ kind: 'pert', min: 15, mode: 20, max: 37 }, { smooth: true }],
    [{ kind: 'pert', min: 0, mode: 0, max: 1 }, { smooth: true }],
  ])('%j keeps the contract', (d, options) => expect(distributionContract(d, options)).toEqual([]))

  test.each<[unknown, string[]]>([[{ kind: 'pert', min: 5, mode: 5, max: 5 }, ['min is 5 and max is 5; min must be below max']]])(
    '%j is told why not',
    (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons),
  )

  test('a mode in the middle makes it even', () => {
    expect(quantile({ kind: 'pert', min: 2, mode: 4, max: 6 }, 0.5)).toBeCloseTo(4, 13)
  })
})
