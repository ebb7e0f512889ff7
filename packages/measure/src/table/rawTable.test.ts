import { expect, test } from 'vitest'
import { columnLetters, isBlank, placeOf, textCell } from './rawTable.ts'

test('columns as spreadsheets call them', () => {
  expect([0, 25, 26, 51, 52, 701, 702].map(columnLetters)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA'])
})

test('places as people find them', () => {
  expect(placeOf({ spreadsheet: true }, 7, 2, 'seconds')).toBe('cell C7 ("seconds")')
  expect(placeOf({ spreadsheet: false }, 7, 2)).toBe('line 7, column 3')
  expect(placeOf({ spreadsheet: false }, 7, null)).toBe('line 7')
})

test('blanks of all kinds are blanks', () => {
  expect(textCell('\u00a0 \u202f').kind).toBe('empty')
  expect(textCell('\u00a012,5 ').text).toBe('12,5')
  expect(isBlank({ line: 1, lines: 1, cells: [textCell(' ')] })).toBe(true)
})
