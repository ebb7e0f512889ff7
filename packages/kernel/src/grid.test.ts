import { expect, test } from 'vitest'
import { isOnGrid, TICKS_PER_SECOND, toGrid, toGridAt } from './grid.ts'

test('halves round up, whole ticks stay', () => {
  expect(toGrid(0)).toBe(0)
  expect(toGrid(1.5 / TICKS_PER_SECOND)).toBe(2 / TICKS_PER_SECOND)
  expect(toGrid(1.49 / TICKS_PER_SECOND)).toBe(1 / TICKS_PER_SECOND)
  expect(toGrid(4.6375)).toBe(Math.floor(4.6375 * 2 ** 20 + 0.5) / 2 ** 20)
})

test('sums of grid times are exact', () => {
  const a = toGrid(0.1)
  let sum = 0
  for (let k = 0; k < 1_000_000; k++) sum += a
  expect(sum).toBe(a * 1_000_000)
  expect(isOnGrid(sum)).toBe(true)
  expect(isOnGrid(0.1)).toBe(false)
})

test('rounding in place is the same rounding', () => {
  const list = Float64Array.of(0.1, 4.6375, 0)
  for (let at = 0; at < 3; at++) toGridAt(list, at)
  expect([...list]).toEqual([toGrid(0.1), toGrid(4.6375), 0])
})
