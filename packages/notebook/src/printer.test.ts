import type { Table } from '@loopwright/charts'
import { expect, test } from 'vitest'
import { type Cell, oneView } from './cell.ts'
import { printer } from './printer.ts'
import { tableText } from './terminal.ts'

const table: Table = {
  caption: 'Output',
  columns: [
    { head: 'Carriers', align: 'right', pageOnly: false },
    { head: 'Units', align: 'right', pageOnly: false },
  ],
  rows: [{ cells: ['10', '330'], marked: true }],
  note: null,
}
const cells: Cell[] = [
  {
    kind: 'answer',
    id: 'answer',
    sentences: ['With 10 carriers the loop makes 330 units.', 'Nine could not be confirmed.'],
    sure: ['More replications narrow this.'],
  },
  { kind: 'prose', id: 'prose-1', markdown: '## Output\nBy *count*:' },
  { kind: 'table', id: 'counts', where: 'terminal', views: oneView(table) },
  { kind: 'table', id: 'inputs', where: 'page', views: oneView(table) },
]

test('the terminal tells the answer, then the table, then how sure it is', () => {
  const said: string[] = []
  const { print, end } = printer((text) => said.push(text))
  cells.forEach(print)
  end()
  expect(said.filter((text) => text !== '')).toEqual([
    'With 10 carriers the loop makes 330 units.\nNine could not be confirmed.',
    'Output\n\nBy count:',
    tableText(table),
    'More replications narrow this.',
  ])
})

test('a heading with nothing for the terminal below it is not said', () => {
  const said: string[] = []
  const { print, end } = printer((text) => said.push(text))
  print({ kind: 'prose', id: 'h1', markdown: '## Inputs' })
  print(cells[3]!)
  print({ kind: 'prose', id: 'h2', markdown: '## Counts' })
  print(cells[2]!)
  print({ kind: 'prose', id: 'h3', markdown: '## Cautions' })
  end()
  expect(said).toEqual(['Counts', '', tableText(table)])
})

test('without a table the certainty comes last', () => {
  const said: string[] = []
  const { print, end } = printer((text) => said.push(text))
  print(cells[0]!)
  end()
  expect(said.at(-1)).toBe('More replications narrow this.')
})
