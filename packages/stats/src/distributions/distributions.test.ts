import { describe, expect, test } from 'vitest'
import { StatisticsError } from '../statisticsError.ts'
import type { Distribution } from './distribution.ts'
import { checkDistribution, distributionCdf, distributionMean, distributionVariance } from './distributions.ts'
import { quantile, SamplerTable } from './samplerTable.ts'

const lognormal: Distribution = { kind: 'lognormal', mean: 20, cv: 0.3 }

describe('what a draw takes', () => {
  const table = new SamplerTable([
    { kind: 'constant', value: 4 },
    { kind: 'replay', values: [3, 1, 2] },
    lognormal,
    { kind: 'limited', of: { kind: 'constant', value: 4 }, shift: 2, min: null, max: null },
    { kind: 'limited', of: { kind: 'replay', values: [3, 1, 2] }, shift: 10, min: null, max: null },
    { kind: 'occasional', base: 1, probability: 0.1, of: { kind: 'constant', value: 5 } },
  ])
  const drawn = (index: number, u: number, k: number): number => {
    table.draw(index, u, k)
    return table.value[0]!
  }
  test('a constant nothing, a list its number, all else one uniform; those inside others do not count', () => {
    expect([0, 1, 2, 3, 4, 5].map((i) => table.uses(i))).toEqual(['nothing', 'index', 'uniform', 'nothing', 'index', 'uniform'])
    expect(table.size).toBe(6)
  })
  test('a replay list goes round', () => {
    expect([0, 1, 2, 3, 4, 1_000_000_000].map((k) => drawn(1, 0.5, k))).toEqual([3, 1, 2, 3, 1, 1])
    expect([0, 4].map((k) => drawn(4, 0.5, k))).toEqual([13, 11])
  })
  test('a shifted constant', () => expect(drawn(3, 0.5, 0)).toBe(6))
  test('occasional: u below 1 − p gives the base alone', () => {
    expect([0.5, 0.8999, 0.9, 0.95].map((u) => drawn(5, u, 0))).toEqual([1, 1, 6, 6])
  })
  test('a list is taken in its listed order, under limits in the order of its values', () => {
    const listed: Distribution = { kind: 'discrete', values: [9, 2, 5], weights: [2, 5, 3] }
    expect([0.1, 0.2, 0.69, 0.7].map((u) => quantile(listed, u))).toEqual([9, 2, 2, 5])
    const limited: Distribution = { kind: 'limited', of: listed, shift: 0, min: 4, max: null }
    expect([0.1, 0.59, 0.61, 0.9].map((u) => quantile(limited, u))).toEqual([5, 5, 9, 9])
    expect(distributionMean(limited)).toBeCloseTo((5 * 3 + 9 * 2) / 5, 12)
  })
  test('drawAt reads the uniform from a list', () => {
    table.drawAt(2, Float64Array.of(0.1, 0.7), 1, 0)
    expect(table.value[0]).toBe(quantile(lognormal, 0.7))
  })
  test('occasional time on top is the inverse at (u − 1 + p)/p', () => {
    const d: Distribution = { kind: 'occasional', base: 10, probability: 0.25, of: lognormal }
    expect(quantile(d, 0.8)).toBe(10 + quantile(lognormal, (0.8 - 1 + 0.25) / 0.25))
  })
})

describe('moments in closed form', () => {
  test('PERT and triangular with one triple are not interchangeable', () => {
    expect(distributionMean({ kind: 'pert', min: 15, mode: 20, max: 37 })).toBe(22)
    expect(distributionMean({ kind: 'triangular', min: 15, mode: 20, max: 37 })).toBe(24)
  })
  test('interpolating lowers the mean of skewed data', () => {
    const skewed = [1, 1.1, 1.2, 1.3, 1.5, 2, 9]
    const resampled = distributionMean({ kind: 'empirical', values: skewed, interpolate: false })
    expect(distributionMean({ kind: 'empirical', values: skewed, interpolate: true })).toBeLessThan(resampled)
  })
  test('a one-sided limit of an exponential is the exponential again, shifted', () => {
    const d: Distribution = { kind: 'limited', of: { kind: 'exponential', mean: 3 }, shift: 0, min: 2, max: null }
    expect(distributionMean(d)).toBeCloseTo(5, 12)
    expect(distributionVariance(d)).toBeCloseTo(9, 11)
    expect(distributionCdf(d, 2)).toBe(0)
  })
})

describe('parameters that cannot be used are told, all at once, and nothing is thrown', () => {
  const wrong: [unknown, string[]][] = [
    [{ kind: 'constant', value: -1 }, ['value is -1; it must be 0 or more']],
    [{ kind: 'constant', value: Number.NaN }, ['value is NaN; it must be 0 or more']],
    [{ kind: 'uniform', min: 5, max: 5 }, ['min is 5 and max is 5; min must be below max']],
    [{ kind: 'uniform', min: -5, max: Infinity }, ['min is -5; it must be 0 or more', 'max is Infinity; it must be 0 or more']],
    [{ kind: 'triangular', min: 1, mode: 9, max: 5 }, ['mode is 9; it must lie in min … max, 1 … 5']],
    [{ kind: 'pert', min: 5, mode: 5, max: 5 }, ['min is 5 and max is 5; min must be below max']],
    [{ kind: 'exponential', mean: 0 }, ['mean is 0; it must be above 0']],
    [{ kind: 'lognormal', mean: 0, cv: -1 }, ['mean is 0; it must be above 0', 'cv is -1; it must be above 0']],
    [{ kind: 'gamma', mean: 5, cv: 0 }, ['cv is 0; it must be above 0']],
    [{ kind: 'weibull', shape: 0, scale: 5 }, ['shape is 0; it must be above 0']],
    [{ kind: 'weibull', shape: 2 }, ['scale is undefined; it must be above 0']],
    [{ kind: 'empirical', values: [], interpolate: false }, ['values is empty; give at least one value']],
    [{ kind: 'empirical', values: [3, -2], interpolate: false }, ['values holds -2 in row 2; each must be 0 or more']],
    [{ kind: 'discrete', values: [1, 2], weights: [1] }, ['there are 2 values and 1 weights; give one weight for each value']],
    [{ kind: 'discrete', values: [1, 2], weights: [1, 0] }, ['weights holds 0 in row 2; each must be above 0']],
    [{ kind: 'replay', values: [1, 'x'] }, ['values holds "x" in row 2; each must be 0 or more']],
    [{ kind: 'occasional', base: 1, probability: 1.2, of: lognormal }, ['probability is 1.2; it must lie in 0 … 1']],
    [
      { kind: 'occasional', base: 1, probability: 0.2, of: { kind: 'replay', values: [1] } },
      ['of is a replay list, which takes no uniform; use its values as an empirical distribution'],
    ],
    [{ kind: 'occasional', base: 1, probability: 0.2, of: { kind: 'exponential', mean: 0 } }, ['of: mean is 0; it must be above 0']],
    [{ kind: 'limited', of: lognormal, shift: -1, min: null, max: null }, ['shift is -1; it must be 0 or more']],
    [{ kind: 'limited', of: lognormal, shift: 0, min: 40, max: 12 }, ['min is 40 and max is 12; min must be below max']],
    [
      { kind: 'limited', of: lognormal, shift: 0, min: 80, max: null },
      ['the limits cut away nearly all of it: they keep 0.000056 %; at least 1 % must stay'],
    ],
    [
      { kind: 'limited', of: { kind: 'replay', values: [1, 2] }, shift: 0, min: 1, max: null },
      ['a replay list is taken as it is; limits cannot apply to it'],
    ],
    [
      { kind: 'normal', mean: 5, sd: 1 },
      [
        'the kind "normal" is unknown; use one of ' +
          'constant, uniform, triangular, exponential, lognormal, gamma, weibull, pert, empirical, discrete, replay, occasional, limited',
      ],
    ],
    [
      null,
      [
        'the kind "undefined" is unknown; use one of constant, uniform, triangular, exponential, lognormal, gamma, weibull, pert, empirical, discrete, replay, occasional, limited',
      ],
    ],
  ]
  test.each(wrong)('%j', (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons))

  test('a record without what it is made of, and one that holds itself', () => {
    expect(checkDistribution({ kind: 'limited', shift: 0, min: null, max: null } as unknown as Distribution).join()).toContain(
      'of: the kind',
    )
    const round = { kind: 'limited', shift: 0, min: null, max: null } as Record<string, unknown>
    round.of = round
    expect(checkDistribution(round as unknown as Distribution).join()).toContain('more than 8 distributions inside one another')
  })
  test('drawing from them is refused with the first reason', () => {
    expect(() => new SamplerTable([lognormal, { kind: 'exponential', mean: 0 }])).toThrow(StatisticsError)
    expect(() => quantile({ kind: 'exponential', mean: 0 }, 0.5)).toThrow('This exponential cannot be used: mean is 0; it must be above 0.')
    expect(() => distributionMean({ kind: 'lognormal', mean: 20, cv: 0 })).toThrow('cv is 0')
  })
})
