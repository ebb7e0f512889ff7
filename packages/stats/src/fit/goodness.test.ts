import { expect, test } from 'vitest'
import { fitDuration } from './durationFit.ts'
import { goodness } from './goodness.ts'

test('quantiles of the curve itself lie nearly on it', () => {
  const fit = fitDuration([8, 9, 10, 11, 13], 'lognormal')
  const [mu, sigma] = fit.parameters
  const values = [-1.2816, -0.5244, 0, 0.5244, 1.2816].map((z) => Math.exp(mu + sigma * z))
  const near = goodness(values, fit)
  expect(near.largestDifference).toBeCloseTo(0.1, 3)
  expect(near.andersonDarling).toBeLessThan(0.3)
  const far = goodness(
    values.map((value) => 1.5 * value),
    fit,
  )
  expect(far.andersonDarling!).toBeGreaterThan(10 * near.andersonDarling!)
})

test('a value that the curve excludes is named, and no number is given', () => {
  const fit = fitDuration([100, 101, 102, 99], 'gamma')
  expect(goodness([100, 1e6, 101], fit)).toMatchObject({ andersonDarling: null, excludedRow: 2 })
})

test('the order of the values does not matter', () => {
  const fit = fitDuration([8, 9, 10, 11, 13], 'weibull')
  expect(goodness([13, 8, 10, 9, 11], fit)).toEqual(goodness([8, 9, 10, 11, 13], fit))
})
