import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution } from './distributions.ts'

describe('constant', () => {
  test.each<[Distribution, { smooth: boolean }]>([
    [{ kind: 'constant', value: 4 }, { smooth: true }],
    [{ kind: 'constant', value: 0 }, { smooth: true }],
  ])('%j keeps the contract', (d, options) => expect(distributionContract(d, options)).toEqual([]))

  test.each<[unknown, string[]]>([
    [{ kind: 'constant', value: -1 }, ['value is -1; it must be 0 or more']],
    [{ kind: 'constant', value: Number.NaN }, ['value is NaN; it must be 0 or more']],
  ])('%j is told why not', (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons))
})
