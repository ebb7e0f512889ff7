import type { Table } from '@loopwright/charts'
import { expect, test } from 'vitest'
import { type Cell, oneView } from './cell.ts'
import { printer } from './printer.ts'
import { tableText, terminalText } from './terminal.ts'

const table: Table = {
  caption: 'Output by number of carriers',
  columns: [
    { head: 'Carriers', align: 'right', pageOnly: false },
    { head: 'Units,\nmean ± 95 %', align: 'right', pageOnly: false },
    { head: 'Lap, min', align: 'right', pageOnly: true },
    { head: 'Limited by', align: 'left', pageOnly: false },
  ],
  rows: [
    { cells: ['9', '327 ± 2', '10.1', 'station'], marked: false },
    { cells: ['10', '330 ± 1', '11.2', 'station'], marked: true },
  ],
  note: null,
}
const cells: Cell[] = [
  { kind: 'answer', id: 'answer', sentences: ['With 10 carriers the loop makes 330 units.', 'Nine could not be confirmed.'], sure: ['More replications narrow this.'] },
  { kind: 'prose', id: 'prose-1', markdown: '## Output\nBy *count*:' },
  { kind: 'table', id: 'counts', where: 'terminal', views: oneView(table) },
  { kind: 'table', id: 'inputs', where: 'page', views: oneView(table) },
]

test('numbers to the right, words to the left, the marked row begins with >', () => {
  expect(tableText(table)).toBe(
    ['                 Units,', '  Carriers  mean ± 95 %  Limited by', '         9      327 ± 2  station', '>       10      330 ± 1  station'].join('\n'),
  )
})

test('bold only where colour is asked for', () => {
  expect(tableText(table)).not.toContain('\u001b')
  expect(tableText(table, { colour: true }).split('\n')[3]).toBe('\u001b[1m>       10      330 ± 1  station\u001b[22m')
})

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

test('controls and standing cautions belong to the page, warnings to both', () => {
  expect(terminalText({ kind: 'choice', id: 'c', legend: 'Carriers', options: [{ key: '5', label: '5' }], shown: '5' })).toBe('')
  expect(terminalText({ kind: 'caution', id: 'c', title: 'Use', markdown: 'x', tone: 'caution' })).toBe('')
  expect(terminalText({ kind: 'caution', id: 'w', title: 'Gridlock', markdown: 'at **18** carriers', tone: 'warning' })).toBe('Gridlock:\nat 18 carriers')
})
