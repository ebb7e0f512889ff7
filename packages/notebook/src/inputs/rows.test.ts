import { expect, test } from 'vitest'
import { listTable, textTable } from './rows.ts'

test('a list has its inputs to the left', () => {
  expect(listTable('Line', [['Speed', '15 m/min']])).toMatchObject({
    caption: 'Line',
    rows: [{ cells: ['Speed', '15 m/min'], marked: false }],
    note: null,
  })
})

test('words to the left, numbers to the right', () => {
  const table = textTable('Stations', ['Station', 'Zone', 'Mean time, s'], ['Zone'], [['S1', 'Z02', '40.2']], 'note')
  expect(table.columns.map((column) => column.align)).toEqual(['left', 'left', 'right'])
})
