import { expect, test } from 'vitest'
import { normalQuantile } from './normalQuantile.ts'
import { tQuantile } from './tQuantile.ts'

test('one and two degrees of freedom in closed form', () => {
  for (const p of [0.6, 0.9, 0.975, 0.9999]) {
    expect(Math.abs(tQuantile(p, 1) / Math.tan(Math.PI * (p - 0.5)) - 1)).toBeLessThan(1e-10)
    const a = 2 * p - 1
    expect(Math.abs(tQuantile(p, 2) / (a * Math.sqrt(2 / (1 - a * a))) - 1)).toBeLessThan(1e-10)
  }
})

test('odd about one half; the normal in the limit', () => {
  for (const df of [0.5, 1, 9, 200]) expect(tQuantile(0.1, df)).toBeCloseTo(-tQuantile(0.9, df), 12)
  expect(tQuantile(0.5, 3)).toBe(0)
  expect(tQuantile(0.975, 1e7)).toBe(normalQuantile(0.975))
  expect(tQuantile(0.975, 9_999_999)).toBeCloseTo(normalQuantile(0.975), 6)
})

test('asked again it gives the same, also after very many others', () => {
  const first = tQuantile(0.95, 7)
  for (let df = 1; df <= 20_001; df++) tQuantile(0.5, df)
  expect(tQuantile(0.95, 7)).toBe(first)
})

test('arguments out of range, and values beyond the largest number, are refused', () => {
  expect(() => tQuantile(0.5, 0)).toThrow('the degrees of freedom is 0')
  expect(() => tQuantile(Number.NaN, 5)).toThrow('the probability is NaN')
  expect(() => tQuantile(1e-100, 0.1)).toThrow('beyond the largest number')
})
