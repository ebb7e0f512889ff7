import { expect, test } from 'vitest'
import { firstWords } from './firstWords.ts'

const first = { replications: 10, leading: 13, unitsMean: 152.34, fewest: 11, within: 0.01 }

test('which count makes most, and the fewest carriers that make nearly as much', () => {
  expect(firstWords(first)).toBe(
    'so far, after 10 runs of each, 13 carriers make the most (152.3 units); 11 are the fewest within 1 % of that',
  )
  expect(firstWords({ ...first, fewest: 13 })).toBe(
    'so far, after 10 runs of each, 13 carriers make the most (152.3 units); with fewer it is more than 1 % less',
  )
})
