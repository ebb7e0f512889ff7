import { type Table, tableOf } from '@loopwright/charts/table'
import { expect, test } from 'vitest'
import { type Cell, oneView, tableCell } from '../cells/cell.ts'
import { printer } from './printer.ts'
import { tableText } from './tableText.ts'

const table: Table = tableOf<readonly [carriers: number, units: number]>({
  caption: 'Output',
  columns: [
    { head: 'Carriers', text: ([carriers]) => `${carriers}`, data: [['carriers', 'number of carriers', ([carriers]) => carriers]] },
    { head: 'Units', text: ([, units]) => `${units}`, data: [['units', 'units made', ([, units]) => units]] },
  ],
  rows: [[10, 330]],
  marked: () => true,
})
const counts: Cell = tableCell('counts', table)
const inputs: Cell = { ...tableCell('inputs', table), pageOnly: true }
const cells: Cell[] = [
  { kind: 'answer', id: 'answer', sentences: ['With 10 carriers the loop makes 330 units.', 'Nine could not be confirmed.'] },
  { kind: 'prose', id: 'prose-1', markdown: '## Output\nBy *count*:' },
  counts,
  { kind: 'sure', id: 'sure', sentences: ['More replications narrow this.'] },
  inputs,
]

test('the terminal tells the answer, then the table, then how sure it is', () => {
  const said: string[] = []
  const { print, end } = printer((text) => said.push(text))
  cells.forEach(print)
  end()
  expect(said.filter((text) => text !== '')).toEqual([
    'With 10 carriers the loop makes 330 units.\nNine could not be confirmed.',
    'Output\n\nBy count:',
    `Output\n${tableText(table)}`,
    'More replications narrow this.',
  ])
})

test('a heading with nothing for the terminal below it is not said', () => {
  const said: string[] = []
  const { print, end } = printer((text) => said.push(text))
  print({ kind: 'prose', id: 'h1', markdown: '## Inputs' })
  print(inputs)
  print({ kind: 'prose', id: 'h2', markdown: '## Counts' })
  print(counts)
  print({ kind: 'prose', id: 'h3', markdown: '## Cautions' })
  end()
  expect(said).toEqual(['Counts', '', `Output\n${tableText(table)}`])
})

test('what was simulated comes last, wherever its cell stands', () => {
  const said: string[] = []
  const { print, end } = printer((text) => said.push(text))
  const provenance = { scenarioFile: 'a.yaml', scenarioHash: 'abc', seed: '7', replications: 30, engineVersion: '0.1.0', partial: false }
  print({ kind: 'run', id: 'run', sentence: 'One line: 30 replications.', provenance })
  print(cells[0]!)
  end()
  expect(said.at(0)).toMatch(/^With 10 carriers/)
  expect(said.at(-1)).toBe('One line: 30 replications.')
})

test('a figure whose table stands open is told with it', () => {
  const said: string[] = []
  const { print, end } = printer((text) => said.push(text))
  const figure = (tableOpen: boolean) => ({
    finding: 'Output rises.',
    picture: { kind: 'chart', spec: {} } as const,
    alt: '',
    howToRead: '',
    table,
    tableOpen,
  })
  print({ kind: 'chart', id: 'a', views: oneView(figure(true)) })
  print({ kind: 'chart', id: 'b', views: oneView(figure(false)) })
  print({ kind: 'chart', id: 'c', views: oneView(figure(false)), pageOnly: true })
  end()
  expect(said.filter((text) => text !== '')).toEqual([`Output rises.\n\nOutput\n${tableText(table)}`, 'Output rises.'])
})
