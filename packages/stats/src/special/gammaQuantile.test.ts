import { expect, test } from 'vitest'
import { chiSquareQuantile, gammaQuantile } from './gammaQuantile.ts'
import { gammaP, gammaQ } from './incompleteGamma.ts'

const PROBABILITIES = [1e-300, 2 ** -54, 1e-8, 0.001, 0.3, 0.5, 0.500001, 0.9, 0.999, 1 - 1e-10, 1 - 2 ** -53]

test.each([0.01, 0.1, 0.39, 0.7, 1, 1.5, 3, 11, 44, 1000])('shape %d gives the probability back, in the smaller tail', (shape) => {
  for (const p of PROBABILITIES) {
    const x = gammaQuantile(p, shape)
    if (x < 1e-290) {
      // below the smallest double the value is x = (p·Γ(a + 1))^(1/a): rounded to 0, and then p was small
      expect(p).toBeLessThan(0.5)
      continue
    }
    const ratio = p > 0.5 ? gammaQ(shape, x) / (1 - p) : gammaP(shape, x) / p
    expect(Math.abs(ratio - 1)).toBeLessThan(5e-12)
  }
})

test('two degrees of freedom are an exponential', () => {
  expect(chiSquareQuantile(0.3, 2)).toBeCloseTo(-2 * Math.log(0.7), 14)
})

test('arguments out of range are refused', () => {
  expect(() => gammaQuantile(1, 2)).toThrow('gammaQuantile: the probability is 1')
  expect(() => gammaQuantile(0.5, 0)).toThrow('the shape is 0')
  expect(() => chiSquareQuantile(0.5, 0)).toThrow('the degrees of freedom is 0')
})
