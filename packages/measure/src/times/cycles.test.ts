import { expect, test } from 'vitest'
import { cyclesFor } from './cycles.ts'

// the worked example of Introduction to Work Study (International Labour Office), from memory: 7, 6, 7, 7, 6 hundredths of a minute give 8.81, so 9 readings
test('the worked example of the handbook', () => expect(cyclesFor([7, 6, 7, 7, 6], 0.05)!.handbook).toBe(9))

test('with t instead of 2 more are needed, and those that are there count', () => {
  const { needed, more, knownTo } = cyclesFor([7, 6, 7, 7, 6], 0.05)!
  // 13: (2.1788 · 1.6598)² = 13.08 is more than 13; 14: (2.1604 · 1.6598)² = 12.86
  expect([needed, more]).toEqual([14, 9])
  // s = 0.5477, t of 4 degrees 2.7764: 0.6801/6.6
  expect(knownTo).toBeCloseTo(0.10304, 4)
  expect(cyclesFor([5], 0.05)).toBeNull()
  expect(cyclesFor([5, 5, 5], 0.05)).toMatchObject({ needed: 2, more: 0, knownTo: 0 })
})
