import { expect, test } from 'vitest'
import { cellTables } from '../cells/cellTables.ts'
import { unitsData } from './unitsData.ts'

test('a row for each window of each line', () => {
  const cell = unitsData(
    'compare-units',
    'line',
    [
      { name: 'A', units: [3, 4] },
      { name: 'B', units: [5] },
    ],
    { one: 'shift', many: 'shifts' },
  )
  expect(cellTables([cell])[0]).toEqual({
    name: 'compare-units',
    columns: ['line', 'replication', 'units'],
    rows: [
      ['A', 0, 3],
      ['A', 1, 4],
      ['B', 0, 5],
    ],
  })
})
