import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution, distributionMean } from './distributions.ts'

describe('triangular', () => {
  test.each<[Distribution, { smooth: boolean }]>([
    [{ kind: 'triangular', min: 15, mode: 20, max: 37 }, { smooth: false }],
    [{ kind: 'triangular', min: 3, mode: 8, max: 8 }, { smooth: true }],
    [{ kind: 'triangular', min: 3, mode: 3, max: 8 }, { smooth: true }],
  ])('%j keeps the contract', (d, options) => expect(distributionContract(d, options)).toEqual([]))

  test.each<[unknown, string[]]>([[{ kind: 'triangular', min: 1, mode: 9, max: 5 }, ['mode is 9; it must lie in min … max, 1 … 5']]])(
    '%j is told why not',
    (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons),
  )

  test('its mean is a third of the sum, above that of PERT with the same triple', () => {
    expect(distributionMean({ kind: 'triangular', min: 15, mode: 20, max: 37 })).toBe(24)
    expect(distributionMean({ kind: 'pert', min: 15, mode: 20, max: 37 })).toBe(22)
  })
})
