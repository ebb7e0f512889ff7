import { expect, test } from 'vitest'
import { range } from './spread.ts'

test('ends by type 7, as samples of ten and one show (Hyndman & Fan 1996)', () => {
  expect(range([11, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10])).toEqual({ p10: 2, p50: 6, p90: 10 })
  expect(range([4])).toEqual({ p10: 4, p50: 4, p90: 4 })
})
