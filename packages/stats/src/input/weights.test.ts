import { expect, test } from 'vitest'
import { quantile } from '../distributions/samplerTable.ts'
import { stream } from '../random/stream.ts'
import { dirichletWeights, reweighted, weightedMeanVariance } from './weights.ts'

const values = [21.4, 19.8, 24.6, 20.3, 22.7, 18.9, 27.5]

test('the weighted mean varies as theory says', () => {
  // 20,000 draws: the variance of a sample variance is about 2σ⁴/n; 5 standard errors are 0.05 of it
  const next = stream('7', 0, 'input/task')
  const means = Array.from({ length: 20_000 }, () => {
    const weights = dirichletWeights(values.length, next)
    return values.reduce((sum, value, i) => sum + weights[i]! * value, 0)
  })
  const mean = means.reduce((sum, value) => sum + value, 0) / means.length
  const variance = means.reduce((sum, value) => sum + (value - mean) ** 2, 0) / means.length
  expect(Math.abs(variance / weightedMeanVariance(values) - 1)).toBeLessThan(0.06)
})

test('weights sum to 1 and make a distribution of the values', () => {
  const weights = dirichletWeights(values.length, stream('7', 3, 'input/task'))
  expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 14)
  expect(values).toContain(quantile(reweighted(values, weights), 0.37))
})

test('refused', () => {
  expect(() => dirichletWeights(4, () => 0.5)).toThrow('4 values are too few')
  expect(() => weightedMeanVariance([1])).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
})
