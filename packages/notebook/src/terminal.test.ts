import type { Table } from '@loopwright/charts'
import { expect, test } from 'vitest'
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

test('numbers to the right, words to the left, the marked row begins with >', () => {
  expect(tableText(table)).toBe(
    [
      '                 Units,',
      '  Carriers  mean ± 95 %  Limited by',
      '         9      327 ± 2  station',
      '>       10      330 ± 1  station',
    ].join('\n'),
  )
})

test('bold only where colour is asked for', () => {
  expect(tableText(table)).not.toContain('\u001b')
  expect(tableText(table, { colour: true }).split('\n')[3]).toBe('\u001b[1m>       10      330 ± 1  station\u001b[22m')
})

test('controls and standing cautions belong to the page, warnings to both', () => {
  expect(terminalText({ kind: 'choice', id: 'c', legend: 'Carriers', options: [{ key: '5', label: '5' }], shown: '5' })).toBe('')
  expect(terminalText({ kind: 'caution', id: 'c', title: 'Use', markdown: 'x', tone: 'caution' })).toBe('')
  expect(terminalText({ kind: 'caution', id: 'w', title: 'Gridlock', markdown: 'at **18** carriers', tone: 'warning' })).toBe(
    'Gridlock:\nat 18 carriers',
  )
})
