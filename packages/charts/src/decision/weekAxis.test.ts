import { expect, test } from 'vitest'
import { weekAxis } from './weekAxis.ts'

test('the ends are round and leave room; from 0 on nothing is cut', () => {
  expect(weekAxis([3250, 3400], 'Units a week')).toEqual({ from: 3200, to: 3450, title: 'Units a week', grid: true, cut: true })
  expect(weekAxis([0, 8], 'Units a shift')).toMatchObject({ from: 0, to: 10, cut: false })
  expect(weekAxis([5, 5], 'Units a shift')).toMatchObject({ from: 4.5, to: 5.5 })
})
