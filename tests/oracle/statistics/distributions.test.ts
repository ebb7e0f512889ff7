import { cumulativeShares, type Distribution, quantile, shareIndexAt } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { type Case, expectRelative, readCases } from './vectors.ts'

// biome-ignore lint/suspicious/noExplicitAny: each kind of case has its own input
const DISTRIBUTION_OF: Record<string, (input: any) => Distribution> = {
  uniform: (input) => ({ kind: 'uniform', ...input }),
  triangular: (input) => ({ kind: 'triangular', ...input }),
  exponential: (input) => ({ kind: 'exponential', ...input }),
  lognormal: (input) => ({ kind: 'lognormal', ...input }),
  gamma: (input) => ({ kind: 'gamma', ...input }),
  weibull: (input) => ({ kind: 'weibull', ...input }),
  pert: (input) => ({ kind: 'pert', ...input }),
  'empirical resample': (input) => ({ kind: 'empirical', interpolate: false, ...input }),
  'empirical interpolated': (input) => ({ kind: 'empirical', interpolate: true, ...input }),
  'share list (index from 0)': ({ shares }) => ({ kind: 'discrete', values: [...shares.keys()], weights: shares }),
  'lognormal truncated': ({ mean, cv, min, max }) => ({ kind: 'limited', of: { kind: 'lognormal', mean, cv }, shift: 0, min, max }),
}

test.each(readCases('distributions'))('$id $kind', (one: Case) => {
  const of = DISTRIBUTION_OF[one.kind]
  if (of === undefined) throw new Error(`no distribution for the kind "${one.kind}"`)
  const tolerance = one.kind === 'gamma' || one.kind === 'pert' ? 1e-10 : 1e-12
  one.input.u.forEach((u: number, i: number) => {
    const want = one.expect.x[i]
    expectRelative(quantile(of(one.input), u), want, tolerance)
    if (one.kind.startsWith('share list')) expect(shareIndexAt(cumulativeShares(one.input.shares), 0, one.input.shares.length, Float64Array.of(u), 0)).toBe(want)
  })
})
