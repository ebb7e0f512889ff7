import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { lognormalFit } from './lognormalFit.ts'
import { lognormalTest } from './lognormalTest.ts'

test('p is near even where the shape is true', () => {
  // 2,000 sets of 30: the share below 0.05 has standard error 0.0049; 0.03 is 6 of them, for the formula is an approximation
  const next = stream('7', 0, 'closed form')
  let below = 0
  for (let s = 0; s < 2000; s++) {
    const values = Array.from({ length: 30 }, () => lognormalFit.quantile([3, 0.25], next()))
    if (lognormalTest(values).pValue < 0.05) below++
  }
  expect(Math.abs(below / 2000 - 0.05)).toBeLessThan(0.03)
})

test('each piece of the formula gives a chance', () => {
  const even = Array.from({ length: 40 }, (_, i) => lognormalFit.quantile([3, 0.3], (i + 0.5) / 40))
  for (const heavier of [1, 1.6, 2.2, 3, 6]) {
    const { pValue } = lognormalTest(even.map((value, i) => (i > 34 ? value * heavier : value)))
    expect(pValue).toBeGreaterThan(0)
    expect(pValue).toBeLessThanOrEqual(1)
  }
})

test('refused', () => {
  expect(() => lognormalTest([1, 2, 3])).toThrow('from 3 values: give at least 8')
  expect(() => lognormalTest([1, 2, 3, 4, 5, 6, 7, 0])).toThrow('Value 0 in row 8')
  expect(() => lognormalTest(Array(8).fill(3))).toThrow('All 8 values are 3')
})
