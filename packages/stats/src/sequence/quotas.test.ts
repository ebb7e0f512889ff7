import { expect, test } from 'vitest'
import { quotas } from './quotas.ts'

test('they sum to n, and more units take none away', () => {
  let before = [0, 0, 0]
  for (let n = 1; n <= 200; n++) {
    const now = quotas([52, 31, 17], n)
    expect(now.reduce((sum, one) => sum + one, 0)).toBe(n)
    now.forEach((one, i) => void expect(one).toBeGreaterThanOrEqual(before[i]!))
    before = now
  }
  expect(quotas([52, 31, 17], 100)).toEqual([52, 31, 17])
  expect(quotas([1, 1], 0)).toEqual([0, 0])
})

test('refused', () => expect(() => quotas([1, 1], -1)).toThrow('The number of units is -1'))
