import { expect, test } from 'vitest'
import { betaQuantile } from './betaQuantile.ts'
import { betaTails } from './incompleteBeta.ts'

const PROBABILITIES = [1e-200, 2 ** -54, 1e-8, 0.001, 0.3, 0.5, 0.500001, 0.9, 0.999, 1 - 1e-10, 1 - 2 ** -53]

test.each([0.5, 1, 2.3, 7, 87, 500])('a = %d gives the probability back, in the smaller tail', (a) => {
  for (const b of [0.5, 1, 2.3, 14, 300]) {
    for (const p of PROBABILITIES) {
      const { x, complement } = betaQuantile(p, a, b)
      expect(Math.abs(x + complement - 1)).toBeLessThan(1e-15)
      if (Math.min(x, complement) < 1e-290) continue
      const tails = betaTails(a, b, x, complement)
      expect(Math.abs((p > 0.5 ? tails.upper / (1 - p) : tails.lower / p) - 1)).toBeLessThan(1e-10)
    }
  }
})

test('arguments out of range are refused', () => {
  expect(() => betaQuantile(0, 1, 1)).toThrow('the probability is 0')
  expect(() => betaQuantile(0.5, 0, 1)).toThrow('a is 0')
  expect(() => betaQuantile(0.5, 1, Infinity)).toThrow('b is Infinity')
})
