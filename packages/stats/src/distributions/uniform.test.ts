import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution } from './distributions.ts'

describe('uniform', () => {
  test.each<[Distribution, { smooth: boolean }]>([
    [{ kind: 'uniform', min: 2, max: 5 }, { smooth: true }],
    [{ kind: 'uniform', min: 0, max: 0.1 }, { smooth: true }],
  ])('%j keeps the contract', (d, options) => expect(distributionContract(d, options)).toEqual([]))

  test.each<[unknown, string[]]>([
    [{ kind: 'uniform', min: 5, max: 5 }, ['min is 5 and max is 5; min must be below max']],
    [{ kind: 'uniform', min: -5, max: Infinity }, ['min is -5; it must be 0 or more', 'max is Infinity; it must be 0 or more']],
  ])('%j is told why not', (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons))
})
