import { type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { expect, test } from 'vitest'
import { type Cell, type ChartCell, oneView, tableCell } from './cell.ts'
import { cellTables } from './cellTables.ts'

interface Station {
  readonly name: string
  readonly work: number
  /** null: not asked */
  readonly wait: number | null
}

/** with a column for waiting where some station waits */
function table(...rows: readonly Station[]): Table {
  const waits = rows.some(({ wait }) => wait !== null)
  return tableOf<Station>({
    caption: 'Stations',
    columns: [
      wordColumn('Station', 'station', 'name of the station', ({ name }) => name),
      { head: 'Work, s', text: ({ work }) => work.toFixed(0), data: [['work_s', 'seconds of work', ({ work }) => work]] },
      ...(waits
        ? [
            {
              head: 'Wait',
              text: () => '',
              data: [['wait_s', 'seconds of waiting; empty: not known', ({ wait }: Station) => wait] as const],
            },
          ]
        : []),
    ],
    rows,
  })
}

const ONE = table({ name: 'S1', work: 48.25, wait: null })
const figure = (of: Table): ChartCell['views']['of'][number]['content'] => ({
  finding: 'S1 works most.',
  picture: { kind: 'chart', spec: {} },
  alt: '',
  howToRead: '',
  table: of,
  tableOpen: false,
})
const switched: ChartCell = {
  kind: 'chart',
  id: 'stations',
  views: {
    choice: 'carriers',
    shown: '6',
    of: [
      { key: '5', content: figure(ONE) },
      { key: '6', content: figure(table({ name: 'S1', work: 47.5, wait: 3 })) },
    ],
  },
}
const named = (cells: readonly Cell[]) => new Map(cellTables(cells).map((each) => [each.name, each]))

test('a table is a file in full precision, called as its cell; details for the page and numbers for files alone too', () => {
  const files = named([
    { kind: 'answer', id: 'answer', sentences: ['S1 works most.'] },
    tableCell('work', ONE),
    { ...tableCell('details', ONE), pageOnly: true },
    { kind: 'data', id: 'replications', table: ONE },
    { kind: 'chart', id: 'chart', views: oneView(figure(ONE)) },
  ])
  expect([...files.keys()]).toEqual(['work', 'details', 'replications', 'chart', 'columns'])
  for (const name of ['work', 'details', 'replications', 'chart'])
    expect(files.get(name)).toEqual({ name, columns: ['station', 'work_s'], rows: [['S1', 48.25]] })
})

test('views of a choice stand below each other, the choice first; what a view has no column for is empty', () => {
  expect(named([switched]).get('stations')).toEqual({
    name: 'stations',
    columns: ['carriers', 'station', 'work_s', 'wait_s'],
    rows: [
      [5, 'S1', 48.25, null],
      [6, 'S1', 47.5, 3],
    ],
  })
})

test('a choice that the table has as a column is not put in twice', () => {
  const own = tableOf<number>({
    caption: 'Counts',
    columns: [{ head: 'Carriers', text: (count) => `${count}`, data: [['carriers', 'number of carriers', (count) => count]] }],
    rows: [5],
  })
  const cell: Cell = { kind: 'table', id: 'counts', views: { choice: 'carriers', shown: '5', of: [{ key: '5', content: own }] } }
  expect(named([cell]).get('counts')).toEqual({ name: 'counts', columns: ['carriers'], rows: [[5]] })
})

test('every column of every file is explained; a table without rows is no file', () => {
  const files = named([switched, tableCell('none', table()), tableCell('work', ONE)])
  expect(files.has('none')).toBe(false)
  const explained = files.get('columns')!
  expect(explained.columns).toEqual(['file', 'column', 'says'])
  const said = explained.rows.map(([file, column]) => `${file} ${column}`)
  const told = [...files.values()].filter(({ name }) => name !== 'columns')
  expect(said).toEqual(told.flatMap(({ name, columns }) => columns.map((column) => `${name} ${column}`)))
  expect(explained.rows.every(([, , says]) => says !== '')).toBe(true)
})
