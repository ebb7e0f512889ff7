import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import {
  checkDistribution,
  distributionCdf,
  distributionKinds,
  distributionMean,
  distributionVariance,
  distributionWords,
  hasAtoms,
  longerTimes,
  meanUpTo,
  scaledTimes,
} from './distributions.ts'
import { quantile } from './samplerTable.ts'

const ALL: readonly Distribution[] = [
  { kind: 'constant', value: 3 },
  { kind: 'uniform', min: 1, max: 3 },
  { kind: 'triangular', min: 1, mode: 2, max: 5 },
  { kind: 'pert', min: 15, mode: 20, max: 37 },
  { kind: 'exponential', mean: 4 },
  { kind: 'lognormal', mean: 20, cv: 0.3 },
  { kind: 'gamma', mean: 20, cv: 0.3 },
  { kind: 'weibull', shape: 1.7, scale: 9 },
  { kind: 'empirical', values: [3, 1, 4], interpolate: true },
  { kind: 'discrete', values: [1, 2], weights: [1, 3] },
  { kind: 'replay', values: [1, 2] },
  { kind: 'occasional', base: 2, probability: 0.1, of: { kind: 'exponential', mean: 5 } },
  { kind: 'limited', of: { kind: 'exponential', mean: 5 }, shift: 1, min: 2, max: 20 },
]

const KINDS = ALL.map(({ kind }) => kind).join(', ')

describe('checkDistribution never throws on data', () => {
  test('an unknown kind, a normal among them, is told the kinds there are', () => {
    expect(checkDistribution({ kind: 'normal', mean: 5, sd: 1 } as unknown as Distribution)).toEqual([
      `the kind "normal" is unknown; use one of ${KINDS}`,
    ])
    expect(checkDistribution({ kind: 'toString' } as unknown as Distribution)[0]).toContain('the kind "toString" is unknown')
  })
  test('nothing at all, and a record without what it is made of', () => {
    expect(checkDistribution(null as unknown as Distribution)).toEqual([`the kind "undefined" is unknown; use one of ${KINDS}`])
    expect(checkDistribution({ kind: 'limited', shift: 0, min: null, max: null } as unknown as Distribution).join()).toContain(
      'of: the kind',
    )
  })
  test('one that holds itself', () => {
    const round = { kind: 'limited', shift: 0, min: null, max: null } as Record<string, unknown>
    round.of = round
    expect(checkDistribution(round as unknown as Distribution).join()).toContain('more than 8 distributions inside one another')
  })
})

test('asking one that cannot be used is refused with the first reason', () => {
  const wrong: Distribution = { kind: 'lognormal', mean: 20, cv: 0 }
  for (const ask of [distributionMean, distributionVariance, (d: Distribution) => distributionCdf(d, 5)]) {
    expect(() => ask(wrong)).toThrow('This lognormal cannot be used: cv is 0; it must be above 0.')
  }
})

describe('what kinds tell of themselves', () => {
  test('every field of a record is told, and no other', () => {
    for (const d of ALL) {
      const { fields } = distributionKinds().find(({ kind }) => kind === d.kind)!
      expect(Object.keys(fields).sort()).toEqual(
        Object.keys(d)
          .filter((name) => name !== 'kind')
          .sort(),
      )
    }
    expect(ALL.map(({ kind }) => kind)).toEqual(distributionKinds().map(({ kind }) => kind))
  })
  test.each(ALL)('$kind: every draw is the old one times the factor, from the same uniform', (times) => {
    const scaled = scaledTimes(times, 1.05)
    for (const u of [0.001, 0.2, 0.5, 0.93, 0.9999]) expect(quantile(scaled, u) / (1.05 * quantile(times, u))).toBeCloseTo(1, 9)
    expect(distributionMean(scaled) / (1.05 * distributionMean(times))).toBeCloseTo(1, 9)
    if (times.kind !== 'constant') expect(distributionVariance(scaled) / (1.05 ** 2 * distributionVariance(times))).toBeCloseTo(1, 9)
  })
  test('a list that is played back is scaled value by value', () => {
    expect(scaledTimes({ kind: 'replay', values: [1, 2] }, 2)).toEqual({ kind: 'replay', values: [2, 4] })
  })
  test.each(ALL)('$kind: longer by so much in the mean', (times) => {
    const more = longerTimes(times, 2)
    expect(checkDistribution(more)).toEqual([])
    expect(distributionMean(more)).toBeCloseTo(distributionMean(times) + 2, 9)
  })
  test('what may be drawn twice, and words', () => {
    expect(ALL.filter(hasAtoms).map(({ kind }) => kind)).toEqual(['constant', 'empirical', 'discrete', 'replay', 'occasional', 'limited'])
    const to = { value: (x: number) => `${x} s`, share: (x: number) => `${x}`, number: (x: number) => `${x}` }
    expect(distributionWords(ALL.find(({ kind }) => kind === 'limited')!, to)).toBe('mean 5 s, exponential; shifted by 1 s, at least 2 s, at most 20 s')
  })
})

test('the mean up to a limit is the integral of the survival function to it', () => {
  // E[min(X, c)] = ∫₀ᶜ (1 − F): for an exponential m(1 − e^(−c/m)), for a uniform on 0 … b c − c²/(2b), from integration by hand
  expect(meanUpTo({ kind: 'exponential', mean: 30 }, 60)).toBeCloseTo(30 * (1 - Math.exp(-2)), 12)
  expect(meanUpTo({ kind: 'uniform', min: 0, max: 10 }, 4)).toBeCloseTo(4 - 16 / 20, 12)
  expect(meanUpTo({ kind: 'constant', value: 5 }, 3)).toBe(3)
  expect(meanUpTo({ kind: 'lognormal', mean: 240, cv: 0.6 }, 1e9)).toBeCloseTo(240, 9)
})
