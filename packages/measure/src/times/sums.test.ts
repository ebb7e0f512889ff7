import { expect, test } from 'vitest'
import { withoutSums } from './sums.ts'

const column = (...values: number[]) => values.map((value, row) => ({ row, column: 0, value }))

test('the last value is the sum of the others, or their mean to many digits', () => {
  expect([...withoutSums('long', column(45, 46, 47, 138))]).toEqual([['3/0', 'it is the sum of the times above it']])
  expect(withoutSums('long', column(45, 46, 48, 139 / 3)).size).toBe(1)
})

test('a value that happens to be the mean, or two terms, are left alone', () => {
  expect(withoutSums('long', column(45, 46, 47, 46)).size).toBe(0)
  expect(withoutSums('long', column(45, 46, 91)).size).toBe(0)
})
