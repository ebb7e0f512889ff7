import type { Distribution } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { distributionWords } from './distributionWords.ts'

const WORDS: readonly (readonly [Distribution, string])[] = [
  [{ kind: 'constant', value: 45 }, '45 s'],
  [{ kind: 'uniform', min: 30, max: 60 }, '30 s to 60 s, uniform'],
  [{ kind: 'triangular', min: 25, mode: 40, max: 80 }, '25 s to 80 s, most often 40 s, triangular'],
  [{ kind: 'pert', min: 15, mode: 20, max: 37 }, '15 s to 37 s, most often 20 s, PERT'],
  [{ kind: 'exponential', mean: 5400 }, 'mean 90 min, exponential'],
  [{ kind: 'lognormal', mean: 240, cv: 0.6583 }, 'mean 4 min, cv 65.8 %, lognormal'],
  [{ kind: 'gamma', mean: 40, cv: 0.2 }, 'mean 40 s, cv 20 %, gamma'],
  [{ kind: 'weibull', shape: 1, scale: 30 }, 'mean 30 s, shape 1, Weibull'],
  [{ kind: 'empirical', values: [10, 20, 30], interpolate: false }, '3 measured values, mean 20 s'],
  [{ kind: 'discrete', values: [10, 20], weights: [1, 1] }, '2 values by weight, mean 15 s'],
  [{ kind: 'replay', values: [10, 30] }, 'list of 2 values in turn, mean 20 s'],
  [{ kind: 'occasional', base: 30, probability: 0.05, of: { kind: 'constant', value: 10 } }, '30 s, and with 5 % chance on top: 10 s'],
  [
    { kind: 'limited', of: { kind: 'exponential', mean: 20 }, shift: 5, min: null, max: 60 },
    'mean 20 s, exponential; shifted by 5 s, at most 60 s',
  ],
]

test.each(WORDS)('%o', (distribution, words) => {
  expect(distributionWords(distribution)).toBe(words)
})
