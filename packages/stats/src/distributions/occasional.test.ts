import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution } from './distributions.ts'
import { quantile } from './samplerTable.ts'

const LOGNORMAL: Distribution = { kind: 'lognormal', mean: 20, cv: 0.3 }

describe('occasional', () => {
  test.each<[Distribution, { smooth: boolean }]>([
    [{ kind: 'occasional', base: 10, probability: 0.2, of: LOGNORMAL }, { smooth: false }],
    [{ kind: 'occasional', base: 10, probability: 0, of: LOGNORMAL }, { smooth: true }],
    [{ kind: 'occasional', base: 0, probability: 1, of: { kind: 'exponential', mean: 2 } }, { smooth: true }],
  ])('%j keeps the contract', (d, options) => expect(distributionContract(d, options)).toEqual([]))

  test.each<[unknown, string[]]>([
    [{ kind: 'occasional', base: 1, probability: 1.2, of: LOGNORMAL }, ['probability is 1.2; it must lie in 0 … 1']],
    [
      { kind: 'occasional', base: 1, probability: 0.2, of: { kind: 'replay', values: [1] } },
      ['of is a replay list, which takes no uniform; use its values as an empirical distribution'],
    ],
    [{ kind: 'occasional', base: 1, probability: 0.2, of: { kind: 'exponential', mean: 0 } }, ['of: mean is 0; it must be above 0']],
  ])('%j is told why not', (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons))

  test('u below 1 − p gives the base alone, else the inverse at (u − 1 + p)/p on top', () => {
    const step: Distribution = { kind: 'occasional', base: 1, probability: 0.1, of: { kind: 'constant', value: 5 } }
    expect([0.5, 0.8999, 0.9, 0.95].map((u) => quantile(step, u))).toEqual([1, 1, 6, 6])
    const d: Distribution = { kind: 'occasional', base: 10, probability: 0.25, of: LOGNORMAL }
    expect(quantile(d, 0.8)).toBe(10 + quantile(LOGNORMAL, (0.8 - 1 + 0.25) / 0.25))
  })
  test('at the very border the inverse of the time on top meets no pole', () => {
    const d: Distribution = { kind: 'occasional', base: 10, probability: 0.25, of: LOGNORMAL }
    expect(quantile(d, 0.75)).toBe(10 + quantile(LOGNORMAL, 2 ** -54))
  })
})
