import { expect, test } from 'vitest'
import { readCell, readWarnings, refusedCells } from './accountCells.ts'

const account = {
  rows: 4,
  heads: 1,
  read: 1,
  refusals: [
    { line: 3, place: 'line 3', reason: 'it is empty', wholeRow: true },
    { line: 4, place: 'line 4', reason: '"x" is no time', wholeRow: true },
    { line: 5, place: 'line 5', reason: '"x" is no time', wholeRow: true },
  ],
}
const file = { file: 't.csv', account, said: ['cells parted by commas'], doubts: ['Seconds?'] }

test('rows are told, each reason once, empty rows in the table alone', () => {
  expect(readCell('x', [file]).markdown).toBe('t.csv: 4 rows below 1 row of heads: 1 read + 3 refused. Cells parted by commas.')
  expect(readWarnings('x', [file]).map(({ markdown }) => markdown)).toEqual(['- line 4 (and 1 more): "x" is no time.', '- Seconds?'])
  expect(refusedCells('x', [file])[0]!.views.of[0]!.content.rows).toHaveLength(3)
})

test('a row that lacks its value alone is told', () => {
  const lacks = { line: 6, place: 'line 6, column 3 ("time")', reason: 'it is empty', wholeRow: true }
  const [told] = readWarnings('x', [{ ...file, account: { ...account, refusals: [...account.refusals, lacks] }, doubts: [] }])
  expect(told!.markdown).toContain('- line 6, column 3 ("time"): it is empty.')
})

test('nothing refused, nothing told', () => {
  const fine = { ...file, account: { ...account, rows: 1, refusals: [] }, doubts: [] }
  expect([readWarnings('x', [fine]), refusedCells('x', [fine])]).toEqual([[], []])
})
