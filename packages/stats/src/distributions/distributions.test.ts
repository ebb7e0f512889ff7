import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { checkDistribution, distributionCdf, distributionMean, distributionVariance } from './distributions.ts'

const KINDS =
  'constant, uniform, triangular, exponential, lognormal, gamma, weibull, pert, empirical, discrete, replay, occasional, limited'

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
