import { expect, test } from 'vitest'
import { EventRing } from './ring.ts'

test('keeps the last events, oldest first', () => {
  const ring = new EventRing(3)
  expect(ring.list()).toEqual([])
  for (let k = 0; k < 5; k++) ring.add(k / 2, k, 10 * k, -k)
  expect(ring.list()).toEqual([
    { time: 1, kind: 2, a: 20, b: -2 },
    { time: 1.5, kind: 3, a: 30, b: -3 },
    { time: 2, kind: 4, a: 40, b: -4 },
  ])
  expect(ring.count).toBe(5)
})
