import { expect, test } from 'vitest'
import { RowTally } from './rowTally.ts'

const rows = [3, 1, 4, 1, 5, 9, 2, 6].map((value, index) => Float64Array.of(value, index % 2 === 0 ? Number.NaN : value))

test('means and squared deviations, column by column, over the rows that have a number', () => {
  const tally = new RowTally(2)
  for (const [index, row] of rows.entries()) tally.add(index, row)
  // Mean 31/8; sum of squares 173 − 31²/8, by hand.
  expect(tally.mean(0)).toBeCloseTo(31 / 8, 14)
  expect(tally.squares[0]).toBeCloseTo(173 - 31 ** 2 / 8, 12)
  expect(tally.mean(1)).toBeCloseTo((1 + 1 + 9 + 6) / 4, 14)
  expect(tally.counts[1]).toBe(4)
})

test('the order in which rows come changes no bit', () => {
  const ordered = new RowTally(2)
  for (const [index, row] of rows.entries()) ordered.add(index, row)
  const mixed = new RowTally(2)
  for (const index of [5, 0, 7, 3, 1, 2, 6, 4]) mixed.add(index, rows[index]!)
  expect(mixed).toEqual(ordered)
})

test('what follows a gap is not counted', () => {
  const taken: number[] = []
  const tally = new RowTally(2, (row) => taken.push(row[0]!))
  for (const index of [0, 1, 3, 4]) tally.add(index, rows[index]!)
  expect(tally.taken).toBe(2)
  expect(taken).toEqual([3, 1])
})

test('a column without a number has no mean', () => {
  const tally = new RowTally(1)
  tally.add(0, Float64Array.of(Number.NaN))
  expect(tally.mean(0)).toBeNull()
})
