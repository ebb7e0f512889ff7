import { expect, test } from 'vitest'
import { textCell } from '../table/rawTable.ts'
import { readRatings } from './ratings.ts'

const rows = (...texts: string[]) => texts.map((text, index) => ({ line: index + 1, lines: 1, cells: [textCell(text)] }))
const shares = (...texts: string[]) => {
  const body = rows(...texts)
  const ratings = readRatings(body, 0, ',')!
  return body.map((row) => ratings.of(row)).map((read) => (read === null ? null : read.ok ? read.value : read.reason))
}

test('per cent or shares, by the column', () => {
  expect(shares('105', '95 %', '')).toEqual([1.05, 0.95, null])
  expect(shares('1.05', '0.9', '3')).toEqual([1.05, 0.9, '"3" is no rating from 40 to 200 %'])
  expect(readRatings([], null, ',')).toBeNull()
})
