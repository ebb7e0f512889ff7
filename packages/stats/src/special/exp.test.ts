import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { expInto } from './exp.ts'

const expOf = (x: number): number => {
  const io = Float64Array.of(9, x)
  expInto(io, 1)
  expect(io[0]).toBe(9)
  return io[1]!
}

test('it has the bits of Math.exp, between 1.04 and 40 and beyond', () => {
  const next = stream('exp', 0, 'numbers')
  const io = new Float64Array(1)
  let different = 0
  for (let k = 0; k < 1_000_000; k++) {
    const x = 45 * next() - 2
    io[0] = x
    expInto(io, 0)
    if (io[0] !== Math.exp(x)) different++
  }
  expect(different).toBe(0)
})

test('near whole and half multiples of ln 2, at its ends, and where there is no exponential', () => {
  for (let half = -4; half <= 120; half++) {
    const x = (half / 2) * Math.LN2
    for (const near of [x - 2e-15, x, x + 2e-15, x - 1e-9, x + 1e-9]) expect(expOf(near)).toBe(Math.exp(near))
  }
  for (const x of [0, -0, 1, 1.04, 40, 1.0400000000000003, 39.99999999999999, 700, 710, -700, -746, 1e-300, Infinity, -Infinity])
    expect(expOf(x)).toBe(Math.exp(x))
  expect(expOf(Number.NaN)).toBeNaN()
})
