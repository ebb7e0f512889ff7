import { expect, test } from 'vitest'
import { distributionMean, distributionVariance } from '../distributions/distributions.ts'
import { quantile } from '../distributions/samplerTable.ts'
import { stream } from '../random/stream.ts'
import { weibullFit } from './weibullFit.ts'

const truth = [2.1, 82] as const

test('it finds again what values were drawn from', () => {
  // 20,000 values; the bounds are five standard errors, by the information of the likelihood
  const next = stream('7', 0, 'weibull')
  const found = weibullFit.fit(
    Array.from({ length: 20_000 }, () => weibullFit.quantile(truth, next())),
    null,
  )
  expect(Math.abs(found[0] / truth[0] - 1)).toBeLessThan(0.03)
  expect(Math.abs(found[1] / truth[1] - 1)).toBeLessThan(0.02)
})

test('no other parameters near by are more likely', () => {
  const values = [3.1, 4.7, 2.2, 9.9, 5.5, 4.1]
  const best = weibullFit.fit(values, null)
  const likelihood = (parameters: readonly [number, number]): number =>
    values.reduce((sum, x) => sum + weibullFit.lnDensity(parameters, x), 0)
  for (const [a, b] of [
    [1.001, 1],
    [0.999, 1],
    [1, 1.001],
    [1, 0.999],
  ] as const) {
    expect(likelihood([best[0] * a, best[1] * b])).toBeLessThan(likelihood(best))
  }
})

test('density, tails, quantile and distribution are of one curve', () => {
  const d = weibullFit.distribution(truth)
  for (const u of [0.01, 0.3, 0.8, 0.999]) {
    const x = weibullFit.quantile(truth, u)
    const tails = weibullFit.lnTails(truth, x)
    expect(Math.exp(tails.lower)).toBeCloseTo(u, 11)
    expect(Math.exp(tails.upper)).toBeCloseTo(1 - u, 11)
    expect(quantile(d, u) / x).toBeCloseTo(1, 11)
    const step = 1e-5 * x
    const slope = (Math.exp(weibullFit.lnTails(truth, x + step).lower) - Math.exp(weibullFit.lnTails(truth, x - step).lower)) / (2 * step)
    expect(slope / Math.exp(weibullFit.lnDensity(truth, x))).toBeCloseTo(1, 6)
  }
  expect(distributionMean(d)).toBeGreaterThan(0)
  expect(distributionVariance(d)).toBeGreaterThan(0)
})

test('large values do not overflow', () => {
  const [shape, scale] = weibullFit.fit([1e200, 1.1e200, 0.9e200], null)
  expect(shape).toBeCloseTo(weibullFit.fit([1, 1.1, 0.9], null)[0], 9)
  expect(scale / 1e200).toBeCloseTo(weibullFit.fit([1, 1.1, 0.9], null)[1], 9)
})
