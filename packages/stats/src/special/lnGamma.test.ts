import { expect, test } from 'vitest'
import { lnGamma } from './lnGamma.ts'

test('factorials and the reflection', () => {
  let factorial = 1
  for (let n = 1; n <= 20; n++) {
    expect(Math.abs(lnGamma(n) - Math.log(factorial))).toBeLessThanOrEqual(1e-14 * Math.max(1, Math.log(factorial)))
    factorial *= n
  }
  for (const x of [1e-300, 1e-9, 0.1, 0.3, 0.4999]) {
    const product = lnGamma(x) + lnGamma(1 - x)
    expect(product).toBeCloseTo(Math.log(Math.PI / Math.sin(Math.PI * x)), 11)
  }
})

test.each([0, -1, Number.NaN, Infinity])('%d is refused', (x) => expect(() => lnGamma(x)).toThrow('lnGamma: x is'))
