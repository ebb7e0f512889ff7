import { expect, test } from 'vitest'
import { addToTally, TALLY, VALUE } from './tally.ts'

// 4, 7, 13, 16: mean 10, sum of squared deviations 36 + 9 + 9 + 36 = 90
test('count, mean, sum of squares, least and largest of a few values', () => {
  const tally = new Float64Array(TALLY)
  for (const value of [7, 16, 4, 13]) {
    tally[VALUE] = value
    addToTally(tally)
  }
  expect([...tally.subarray(0, VALUE)]).toEqual([4, 10, 90, 4, 16])
})

test('a first value below zero is least and largest', () => {
  const tally = new Float64Array(TALLY)
  tally[VALUE] = -2
  addToTally(tally)
  expect([...tally.subarray(0, VALUE)]).toEqual([1, -2, 0, -2, -2])
})
