import { expect, test } from 'vitest'
import { toOpenUnit } from './unit.ts'

test.each([
  [0, 2 ** -54],
  [-1e-17, 2 ** -54],
  [1, 1 - 2 ** -53],
  [1 + 2 ** -52, 1 - 2 ** -53],
  [0.3, 0.3],
  // two that a draw cut at a small share makes of small uniforms are two
  [2 ** -60, 2 ** -60],
  [2 ** -61, 2 ** -61],
])('%d becomes %d', (u, inside) => {
  const io = Float64Array.of(u)
  toOpenUnit(io)
  expect(io[0]).toBe(inside)
})
