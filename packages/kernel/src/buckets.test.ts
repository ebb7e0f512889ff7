import { expect, test } from 'vitest'
import { Buckets } from './buckets.ts'

function filled(times: readonly number[]): Buckets {
  const buckets = new Buckets(Float64Array.from(times))
  buckets.layOutFrom(Math.min(...times), 1)
  for (let slot = 0; slot < times.length; slot++) buckets.add(slot)
  return buckets
}

function opened(buckets: Buckets, most = 100): number[] {
  const slots: number[] = []
  for (let slot = buckets.open(most); slot >= 0; slot = buckets.nextOf[slot]!) slots.push(slot)
  return slots.sort((a, b) => a - b)
}

test('buckets of 1 s are opened one after the other, empty ones passed over; what is left is later', () => {
  const buckets = filled([10.5, 12, 10.25, 12.1])
  expect(opened(buckets)).toEqual([0, 2])
  expect(opened(buckets)).toEqual([1, 3])
  expect(buckets.size).toBe(0)
})

test('what lies past the last bucket comes when all others are empty', () => {
  const buckets = filled([0, 1e6, 1e6 + 0.5, 5])
  const order = [opened(buckets), opened(buckets)]
  while (buckets.size > 0) order.push(opened(buckets))
  expect(order.flat()).toEqual([0, 3, 1, 2])
})

test('a bucket of too many is made narrower, unless their times are the same', () => {
  expect(opened(filled([3, 3, 3, 3]), 2)).toEqual([0, 1, 2, 3])
  const buckets = filled(Array.from({ length: 60 }, (_, k) => k / 100))
  const first = opened(buckets, 20)
  expect(first.length).toBeGreaterThan(0)
  expect(first.length).toBeLessThanOrEqual(20)
  expect(first).toEqual(first.map((_, k) => k))
})

test('a slot taken out is not opened; one before all that is left does not belong here', () => {
  const buckets = filled([1, 1.5, 1.75, 4])
  buckets.remove(1)
  expect(opened(buckets)).toEqual([0, 2])
  buckets.times[1] = 1.9
  expect(buckets.takes(1)).toBe(false)
  buckets.times[1] = 2
  expect(buckets.takes(1)).toBe(true)
  buckets.clear()
  expect(buckets.size).toBe(0)
})
