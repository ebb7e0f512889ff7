import { expect, test } from 'vitest'
import { normalCdf } from './normal.ts'
import { normalQuantile, normalQuantileInto, normalQuantilesInto } from './normalQuantile.ts'

test('it gives the probability back, in the smaller tail', () => {
  for (const p of [1e-300, 2 ** -54, 1e-8, 0.001, 0.0749, 0.0751, 0.3, 0.5, 0.9, 0.999, 1 - 1e-10, 1 - 2 ** -53]) {
    const z = normalQuantile(p)
    expect(Math.abs((p > 0.5 ? normalCdf(-z) / (1 - p) : normalCdf(z) / p) - 1)).toBeLessThan(2e-12)
  }
})

test('odd about one half, and rising', () => {
  expect(normalQuantile(0.5)).toBe(0)
  let last = -Infinity
  for (let i = 1; i < 4096; i++) {
    const p = i / 4096
    expect(normalQuantile(p) + normalQuantile(1 - p)).toBe(0)
    expect(normalQuantile(p)).toBeGreaterThan(last)
    last = normalQuantile(p)
  }
})

test('in place it gives the same bits', () => {
  const io = Float64Array.of(9, 0.0123, 9)
  normalQuantileInto(io, 1)
  expect([...io]).toEqual([9, normalQuantile(0.0123), 9])
})

test('many in place have the bits of each by itself: none, one, many, in the middle, in the tails and at their edges', () => {
  const edges = [
    0.925,
    0.075,
    0.9249999999999999,
    0.9250000000000002,
    0.07500000000000001,
    0.07499999999999998,
    0.5,
    2 ** -54,
    1 - 2 ** -53,
  ]
  const all = [...edges, ...Array.from({ length: 200 }, (_, k) => ((k * 0.6180339887498949) % 1) + 2 ** -60)]
  for (const count of [0, 1, 16, 64, 65, all.length]) {
    const io = Float64Array.from([9, ...all])
    normalQuantilesInto(io, 1, count)
    expect([...io]).toEqual([9, ...all.slice(0, count).map(normalQuantile), ...all.slice(count)])
  }
})

test.each([0, 1, Number.NaN, -0.1])('%d is refused', (p) => expect(() => normalQuantile(p)).toThrow('normalQuantile: the probability is'))
