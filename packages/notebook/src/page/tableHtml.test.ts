import { expect, test } from 'vitest'
import { NASTY, table } from '../../../../tests/helpers/pageCells.ts'
import { tableHtml } from './tableHtml.ts'

test('a table stands in a container of its own, with a caption', () => {
  expect(tableHtml(table('6'))).toContain('<div class="scroll"><table class="short"><caption class="hidden">Table 6</caption>')
})

test('heads of columns and rows are heads, numbers stand to the right, the marked row is marked', () => {
  const html = tableHtml(table('6'))
  expect(html).toContain('<th scope="col" class="number">Share,<br>%</th>')
  expect(html).toContain('<tr class="marked"><th scope="row">S2</th><td class="number">7</td></tr>')
  expect(html).toContain('<p class="note">Note</p>')
})

test('no text of a user is obeyed', () => {
  expect(tableHtml(table('6'))).not.toContain(NASTY)
})

test('only short tables hold together on paper', () => {
  const long = { ...table('6'), rows: Array.from({ length: 40 }, () => ({ cells: ['a', '1'], values: ['a', 1], marked: false })) }
  expect(tableHtml(table('6'))).toContain('<table class="short">')
  expect(tableHtml(long)).toContain('<table><caption')
})

test('a word that a terminal breaks is whole; a long text beside many columns is not stacked word by word', () => {
  const column = (head: string) => ({ head, align: 'left' as const, pageOnly: false, fields: [] })
  const row = (text: string) => ({ cells: ['S1', text, '1', '2'], values: [], marked: false })
  const wide = {
    ...table('6'),
    columns: ['Station', 'exchan-\nging', 'b', 'c'].map(column),
    rows: [row('a text of many words that goes on and on')],
  }
  expect(tableHtml(wide)).toContain('<th scope="col">exchan&shy;ging</th>')
  expect(tableHtml(wide)).toContain('<td class="long">a text of many words')
  expect(tableHtml({ ...wide, rows: [row('a short text')] })).not.toContain('class="long"')
  const two = { ...wide, columns: wide.columns.slice(0, 2), rows: [{ ...row('a text of many words that goes on and on') }] }
  expect(tableHtml({ ...two, rows: two.rows.map((each) => ({ ...each, cells: each.cells.slice(0, 2) })) })).not.toContain('class="long"')
})
