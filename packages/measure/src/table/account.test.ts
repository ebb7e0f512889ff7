import { expect, test } from 'vitest'
import { accountWords, bookkeeping, isTotal } from './account.ts'
import { findColumns } from './heads.ts'
import { textTable } from './textTable.ts'

const kept = (text: string) => {
  const table = textTable(text, 't.csv')
  return bookkeeping(
    table,
    findColumns(table, { time: ['time'] }, {}, (at) => at.has('time'), 'x'),
  )
}

test('rows read and rows refused are all rows, each refused one with its reason', () => {
  const books = kept('Line 3,\n\ntask,time\na,1\n,\nTotal,1\ntask,time\nb,2,5\n"c\nd,3\ne,4\nf",5\ng,6\n')
  expect(books.body.map(({ line }) => line)).toEqual([4, 13])
  books.refuseCell(books.body[0]!, 1, 'no')
  const account = books.account()
  expect([account.rows, account.read, account.refusals.filter(({ wholeRow }) => wholeRow).length]).toEqual([9, 2, 7])
  expect(account.refusals.map(({ place, reason }) => `${place}: ${reason}`)).toEqual([
    'line 1: it stands above the heads',
    'line 2: it is empty',
    'line 4, column 2 ("time"): no',
    'line 5: it is empty',
    'line 6: "Total": a row of sums or means is no measurement',
    'line 7: the heads come again',
    'line 8: it has 3 cells under 2 heads; decimal commas need a table parted by semicolons, or quotes',
    'line 9: a cell in it runs over 4 lines: a quote opens in it and closes too late',
  ])
  expect(accountWords(account)).toBe('9 rows below 1 row of heads: 2 read + 7 refused. In the rows read, 1 cell was refused.')
})

test('a row that is refused in the end has one reason, not one for each cell', () => {
  const books = kept('task,time\na,1\n')
  books.refuseCell(books.body[0]!, 1, 'no')
  books.refuseRow(books.body[0]!, 'nothing in it can be read')
  expect(books.account().refusals.map(({ reason }) => reason)).toEqual(['nothing in it can be read'])
})

test('sums and means by their words alone', () => {
  expect(['Total', 'Average:', 'Std. dev.', 'Ø', 'Summe'].map(isTotal)).toEqual([true, true, true, true, true])
  expect(['Max torque check', 'Total check', 'mean'].map(isTotal)).toEqual([false, false, true])
})

test('a cell that holds a page of text is no measurement, and nobody looks for a number in it', () => {
  const { refusals, read } = kept(`task,time\na,${'1.'.repeat(50_000)}\nb,2\n`).account()
  expect(refusals.map(({ reason }) => reason)).toEqual(['cell 2 holds 100000 characters, which is no measurement'])
  expect(read).toBe(1)
})
