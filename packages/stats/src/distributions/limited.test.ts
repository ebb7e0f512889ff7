import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { checkDistribution, distributionMean } from './distributions.ts'
import { quantile } from './samplerTable.ts'

const LOGNORMAL: Distribution = { kind: 'lognormal', mean: 20, cv: 0.3 }

describe('limited', () => {
  test.each<[Distribution, { smooth: boolean }]>([
    [{ kind: 'limited', of: LOGNORMAL, shift: 4, min: null, max: null }, { smooth: true }],
    [{ kind: 'limited', of: LOGNORMAL, shift: 0, min: 12, max: 40 }, { smooth: true }],
    [{ kind: 'limited', of: LOGNORMAL, shift: 5, min: null, max: 22 }, { smooth: true }],
    [{ kind: 'limited', of: { kind: 'weibull', shape: 2, scale: 9 }, shift: 3, min: 7, max: null }, { smooth: true }],
    [{ kind: 'limited', of: { kind: 'discrete', values: [9, 2, 5], weights: [2, 5, 3] }, shift: 1, min: 4, max: null }, { smooth: false }],
    [
      { kind: 'limited', of: { kind: 'occasional', base: 10, probability: 0.3, of: LOGNORMAL }, shift: 1, min: 11, max: 40 },
      { smooth: false },
    ],
  ])('%j keeps the contract', (d, options) => expect(distributionContract(d, options)).toEqual([]))

  test.each<[unknown, string[]]>([
    [{ kind: 'limited', of: LOGNORMAL, shift: -1, min: null, max: null }, ['shift is -1; it must be 0 or more']],
    [{ kind: 'limited', of: LOGNORMAL, shift: 0, min: 40, max: 12 }, ['min is 40 and max is 12; min must be below max']],
    [
      { kind: 'limited', of: LOGNORMAL, shift: 0, min: 80, max: null },
      ['the limits cut away nearly all of it: they keep 0.000056 %; at least 1 % must stay'],
    ],
    [
      { kind: 'limited', of: { kind: 'replay', values: [1, 2] }, shift: 0, min: 1, max: null },
      ['a replay list is taken as it is; limits cannot apply to it'],
    ],
  ])('%j is told why not', (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons))

  test('the shift comes first, the limits apply to the result', () => {
    const d: Distribution = { kind: 'limited', of: { kind: 'uniform', min: 0, max: 10 }, shift: 5, min: 8, max: 12 }
    expect([0.25, 0.5].map((u) => quantile(d, u))).toEqual([9, 10])
    expect(distributionMean(d)).toBeCloseTo(10, 13)
  })
  test('values at the limits themselves stay', () => {
    const d: Distribution = { kind: 'limited', of: { kind: 'discrete', values: [2, 4, 6], weights: [1, 1, 1] }, shift: 0, min: 2, max: 4 }
    expect([0.1, 0.49, 0.51, 0.9].map((u) => quantile(d, u))).toEqual([2, 2, 4, 4])
  })
})
