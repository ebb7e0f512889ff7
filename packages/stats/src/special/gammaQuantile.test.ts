import { describe, expect, test } from 'vitest'
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

describe('large shapes, which are not solved for', () => {
  test('the probability comes back at the shape where that begins', () => {
    for (const p of [2 ** -54, 1e-8, 0.001, 0.3, 0.5, 0.7, 0.999, 1 - 1e-10]) {
      const x = gammaQuantile(p, 1e6)
      const ratio = p > 0.5 ? gammaQ(1e6, x) / (1 - p) : gammaP(1e6, x) / p
      expect(Math.abs(ratio - 1)).toBeLessThan(1e-8)
    }
  })

  test('it goes on from the solved ones without a step', () => {
    for (const p of [1e-10, 0.01, 0.5, 0.99, 1 - 1e-10]) {
      const [below, at, above] = [1e6 - 1, 1e6, 1e6 + 1].map((shape) => gammaQuantile(p, shape)) as [number, number, number]
      expect(Math.abs((above - at) / (at - below) - 1)).toBeLessThan(1e-4)
    }
  })

  test('the median is shape − 1/3 + 8/(405·shape) (Choi, On the medians of gamma distributions, 1994; from memory)', () => {
    for (const shape of [1e6, 1e9]) expect(gammaQuantile(0.5, shape) - shape + 1 / 3).toBeCloseTo(8 / 405 / shape, 6)
  })

  test('nearly no spread at all takes no longer, and stays close to the mean', () => {
    for (const shape of [1e10, 1e12, 1e16]) {
      const x = gammaQuantile(0.975, shape)
      expect((x - shape) / Math.sqrt(shape)).toBeCloseTo(1.95996, 3)
    }
  })
})

test('two degrees of freedom are an exponential', () => {
  expect(chiSquareQuantile(0.3, 2)).toBeCloseTo(-2 * Math.log(0.7), 14)
})

test('arguments out of range are refused', () => {
  expect(() => gammaQuantile(1, 2)).toThrow('gammaQuantile: the probability is 1')
  expect(() => gammaQuantile(0.5, 0)).toThrow('the shape is 0')
  expect(() => chiSquareQuantile(0.5, 0)).toThrow('the degrees of freedom is 0')
})
