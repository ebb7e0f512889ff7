import type { Table, TableColumn, TableRow } from '@loopwright/charts/table'
import { describe, expect, test } from 'vitest'
import { tableText } from './tableText.ts'

const ESC = String.fromCodePoint(0x1b)

interface Texts extends Omit<Table, 'columns' | 'rows'> {
  readonly columns: readonly Omit<TableColumn, 'fields'>[]
  readonly rows: readonly Omit<TableRow, 'values'>[]
}

/** A table of texts alone: a terminal looks at nothing else. */
const texts = ({ columns, rows, ...rest }: Texts): Table => ({
  ...rest,
  columns: columns.map((column) => ({ ...column, fields: [] })),
  rows: rows.map((row) => ({ ...row, values: [] })),
})

const table = texts({
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
})

test('numbers to the right, words to the left, the marked row begins with >', () => {
  expect(tableText(table)).toBe(
    [
      '                 Units,',
      '  Carriers  mean ± 95 %  Lap, min  Limited by',
      '         9      327 ± 2      10.1  station',
      '>       10      330 ± 1      11.2  station',
    ].join('\n'),
  )
})

test('bold only where colour is asked for', () => {
  expect(tableText(table)).not.toContain('\u001b')
  expect(tableText(table, { colour: true }).split('\n')[3]).toBe('\u001b[1m>       10      330 ± 1      11.2  station\u001b[22m')
})

/** as many columns of 10 characters as there are marks: p for those of the page */
const wide = (marks: string): Table =>
  texts({
    caption: 'Wide',
    columns: [...marks].map((mark, index) => ({ head: `Column ${index}`, align: 'right', pageOnly: mark === 'p' })),
    rows: [{ cells: [...marks].map((_, index) => `${index}`.repeat(10)), marked: false }],
    note: null,
  })
const headsOf = (text: string): string[] => text.split('\n')[0]!.match(/Column \d+/g)!
const widest = (text: string): number => Math.max(...text.split('\n').map((line) => [...line].length))

describe('columns that have no room', () => {
  test('are left out, those of the page first, and named', () => {
    const text = tableText(wide('.p.p...p'), { columns: 80 })
    expect(headsOf(text)).toEqual(['Column 0', 'Column 2', 'Column 4', 'Column 5', 'Column 6'])
    expect(text).not.toContain('Left out')
  })

  test('a wider terminal shows what it can of them', () =>
    expect(headsOf(tableText(wide('.p.p...p'), { columns: 90 }))).toEqual(headsOf(tableText(wide('.p.p...'), { columns: 90 }))))

  test('then the last ones go; the first stays', () => {
    expect(headsOf(tableText(wide('.......'), { columns: 60 }))).toHaveLength(5)
    expect(headsOf(tableText(wide('.......'), { columns: 10 }))).toEqual(['Column 0'])
  })

  test('nothing is wider than the terminal', () => {
    for (let columns = 60; columns <= 120; columns += 1)
      for (const marks of ['.......p', '.pppppppp', '..........'])
        expect(widest(tableText(wide(marks), { columns, bars: true }))).toBeLessThanOrEqual(columns)
  })
})

test('words are broken into lines before a column goes', () => {
  const rows = [
    { cells: ['speed', 'fifteen metres a minute, as measured at the drive'], marked: true },
    { cells: ['zones', '10'], marked: false },
  ]
  const columns = (['Input', 'Value'] as const).map((head) => ({ head, align: 'left' as const, pageOnly: false }))
  expect(tableText(texts({ caption: 'Inputs', columns, rows, note: null }), { columns: 40 })).toBe(
    ['  Input  Value', '> speed  fifteen metres a minute, as', '         measured at the drive', '  zones  10'].join('\n'),
  )
})

describe('bars', () => {
  const lost = texts({
    caption: 'Lost',
    columns: [
      { head: 'Cause', align: 'left', pageOnly: false },
      { head: 'Units', align: 'right', pageOnly: false, bar: true },
      { head: 'Alone', align: 'right', pageOnly: false },
    ],
    rows: [
      { cells: ['jam', '40', '41'], marked: false, bars: [null, 40, null] },
      { cells: ['breaks', '5', '6'], marked: false, bars: [null, 5, null] },
      { cells: ['all', '45', ''], marked: true },
    ],
    note: null,
  })

  test('stand beside their numbers, the longest full', () =>
    expect(tableText(lost, { bars: true })).toBe(
      [
        '  Cause   Units              Alone',
        '  jam        40  ██████████     41',
        '  breaks      5  █▎              6',
        '> all        45',
      ].join('\n'),
    ))

  test('not unless asked for, and not where they have no room', () => {
    expect(tableText(lost)).not.toContain('█')
    expect(tableText(lost, { bars: true, columns: 30 })).toBe(tableText(lost, { columns: 30 }))
  })
})

test('the tone of a row is a colour where colours may be used', () => {
  const rows = [{ cells: ['9', '327 ± 2', '', 'station'], marked: false, tone: 'bad' as const }]
  expect(tableText(texts({ ...table, rows }), { colour: true }).split('\n')[2]).toContain(`${ESC}[1;31m  `)
  expect(tableText(texts({ ...table, rows }))).not.toContain(ESC)
})

test('what a name says is shown, and a row stays one line', () => {
  const rows = [{ cells: [`a${ESC}[2J\n> b`, '1', '2', 'c\td'], marked: false }]
  const text = tableText(texts({ ...table, rows }))
  expect(text.split('\n')).toHaveLength(3)
  expect(text).toContain('a\\u001b[2J > b')
  expect(text).not.toMatch(/(?!\n)\p{Cc}/u)
})
