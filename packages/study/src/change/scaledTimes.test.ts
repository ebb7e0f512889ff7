import { type Distribution, distributionMean, distributionVariance, quantile } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { scaledTimes } from './scaledTimes.ts'

const kinds: Distribution[] = [
  { kind: 'constant', value: 3 },
  { kind: 'uniform', min: 1, max: 3 },
  { kind: 'triangular', min: 1, mode: 2, max: 5 },
  { kind: 'exponential', mean: 4 },
  { kind: 'lognormal', mean: 20, cv: 0.3 },
  { kind: 'gamma', mean: 20, cv: 0.3 },
  { kind: 'weibull', shape: 1.7, scale: 9 },
  { kind: 'pert', min: 15, mode: 20, max: 37 },
  { kind: 'empirical', values: [3, 1, 4], interpolate: true },
  { kind: 'discrete', values: [1, 2], weights: [1, 3] },
  { kind: 'occasional', base: 2, probability: 0.1, of: { kind: 'exponential', mean: 5 } },
  { kind: 'limited', of: { kind: 'exponential', mean: 5 }, shift: 1, min: 2, max: 20 },
]

test.each(kinds)('$kind: every draw is the old one times the factor, from the same uniform', (times) => {
  const scaled = scaledTimes(times, 1.05)
  for (const u of [0.001, 0.2, 0.5, 0.93, 0.9999]) expect(quantile(scaled, u) / (1.05 * quantile(times, u))).toBeCloseTo(1, 9)
  expect(distributionMean(scaled) / (1.05 * distributionMean(times))).toBeCloseTo(1, 9)
  if (times.kind !== 'constant') expect(distributionVariance(scaled) / (1.05 ** 2 * distributionVariance(times))).toBeCloseTo(1, 9)
})

test('a list that is played back is scaled value by value', () => {
  expect(scaledTimes({ kind: 'replay', values: [1, 2] }, 2)).toEqual({ kind: 'replay', values: [2, 4] })
})
