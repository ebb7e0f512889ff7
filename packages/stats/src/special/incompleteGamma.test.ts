import { expect, test } from 'vitest'
import { gammaP, gammaQ, gammaTails } from './incompleteGamma.ts'
import { lnGamma } from './lnGamma.ts'

test('with shape 1 it is the exponential, deep into both tails', () => {
  for (const x of [1e-12, 0.1, 1, 1.99, 2.01, 30, 700]) {
    expect(Math.abs(gammaQ(1, x) / Math.exp(-x) - 1)).toBeLessThan(1e-12)
    expect(Math.abs(gammaP(1, x) / -Math.expm1(-x) - 1)).toBeLessThan(1e-12)
  }
})

test('the recurrence in the shape', () => {
  for (const a of [0.3, 2.5, 40]) {
    for (const x of [0.5, 3, 41, 60]) {
      const step = Math.exp(a * Math.log(x) - x) / gammaOf(a + 1)
      expect(gammaP(a + 1, x)).toBeCloseTo(gammaP(a, x) - step, 11)
    }
  }
})

/** by Stirling's product, for the test alone */
function gammaOf(a: number): number {
  let product = 1
  let at = a
  while (at < 60) {
    product *= at
    at++
  }
  return (Math.sqrt((2 * Math.PI) / at) * (at / Math.E) ** at * Math.exp(1 / (12 * at) - 1 / (360 * at ** 3))) / product
}

test('both tails at once, or with a known lnΓ, have the same bits', () => {
  for (const a of [0.3, 1, 2.5, 40, 900])
    for (const x of [0, 1e-9, 0.4, 3, 41, 60, 905, Infinity]) {
      expect(gammaTails(a, x)).toEqual({ lower: gammaP(a, x), upper: gammaQ(a, x) })
      expect([gammaP(a, x, lnGamma(a)), gammaQ(a, x, lnGamma(a))]).toEqual([gammaP(a, x), gammaQ(a, x)])
    }
})

test('ends of the range', () => {
  expect([gammaP(3, 0), gammaQ(3, 0), gammaP(3, Infinity), gammaQ(3, Infinity), gammaQ(2, 1e6)]).toEqual([0, 1, 1, 0, 0])
})

test('arguments out of range are refused', () => {
  expect(() => gammaP(0, 1)).toThrow('the shape a is 0')
  expect(() => gammaQ(1, -1)).toThrow('x is -1')
})
