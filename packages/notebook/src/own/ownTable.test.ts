import { expect, test } from 'vitest'
import { ownTable } from './ownTable.ts'

const ROWS = [
  { line: 'today', units: 1320.5, met: true },
  { line: 'proposal', units: 1331, met: null },
]

test('heads are the names, numbers stand right with the same decimals, values are whole', () => {
  const { columns, rows } = ownTable(ROWS)
  expect(columns.map(({ head, align }) => [head, align])).toEqual([
    ['line', 'left'],
    ['units', 'right'],
    ['met', 'left'],
  ])
  expect(rows.map(({ cells }) => cells)).toEqual([
    ['today', '1\u202f320.5', 'yes'],
    ['proposal', '1\u202f331.0', ''],
  ])
  expect(rows[0]!.values).toEqual(['today', 1320.5, true])
})

test('some columns, in another order, with other heads', () => {
  const { columns, rows, caption, note } = ownTable(ROWS, {
    caption: 'Lines',
    columns: { units: 'Units a shift', line: 'Line' },
    decimals: 0,
    note: 'All.',
  })
  expect([caption, note, columns.map(({ head }) => head), rows[0]!.cells]).toEqual([
    'Lines',
    'All.',
    ['Units a shift', 'Line'],
    ['1\u202f321', 'today'],
  ])
})

test('names that are alike in files are told apart', () =>
  expect(ownTable([{ 'a b': 1, 'a-b': 2, '': 3 }]).columns.flatMap(({ fields }) => fields.map(({ name }) => name))).toEqual([
    'a_b',
    'a_b_',
    'column',
  ]))

test.each<[string, () => unknown, string]>([
  ['no rows', () => ownTable([]), 'the table has no rows: there is nothing to show'],
  ['a column that no row has', () => ownTable(ROWS, { columns: { unit: 'Units' } }), 'a column of the table is "unit", which no row has'],
  ['a misspelt option', () => ownTable(ROWS, { captoin: 'x' } as never), 'a table knows nothing called "captoin"'],
  ['no columns', () => ownTable(ROWS, { columns: {} }), 'the table has no columns'],
])('%s is refused', (_, make, message) => expect(make).toThrow(message))
