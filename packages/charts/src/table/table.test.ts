import { expect, test } from 'vitest'
import { type ColumnOf, tableOf, wordColumn } from './table.ts'

interface Run {
  readonly name: string
  readonly units: number
}

const UNITS: ColumnOf<Run> = {
  head: 'Units',
  text: ({ units }) => units.toFixed(0),
  data: [['units', 'units made', ({ units }) => units]],
}
const RUNS: readonly Run[] = [
  { name: 'today', units: 330.4 },
  { name: 'proposal', units: 340.6 },
]

test('texts and numbers come from the same rows', () => {
  const table = tableOf({
    caption: 'Runs',
    columns: [wordColumn<Run>('Line', 'line', 'name of the line', ({ name }) => name), UNITS],
    rows: RUNS,
    marked: ({ name }) => name === 'today',
  })
  expect(table.columns.map(({ head, align, pageOnly }) => [head, align, pageOnly])).toEqual([
    ['Line', 'left', false],
    ['Units', 'right', false],
  ])
  expect(table.columns.flatMap(({ fields }) => fields.map(({ name }) => name))).toEqual(['line', 'units'])
  expect(table.rows).toEqual([
    { cells: ['today', '330'], values: ['today', 330.4], marked: true },
    { cells: ['proposal', '341'], values: ['proposal', 340.6], marked: false },
  ])
})

test('two fields of one name are refused', () => {
  expect(() => tableOf({ caption: 'Runs', columns: [UNITS, UNITS], rows: RUNS })).toThrow(
    'two columns of the table "Runs" are called units',
  )
})
