import { expect, test } from 'vitest'
import { column, row } from './table.ts'

test('columns show everywhere and rows are unmarked unless said otherwise', () => {
  expect(column('Carriers', 'right')).toEqual({ head: 'Carriers', align: 'right', pageOnly: false })
  expect(column('Longest block (min)', 'right', true).pageOnly).toBe(true)
  expect(row(['a'])).toEqual({ cells: ['a'], marked: false })
  expect(row(['a'], true).marked).toBe(true)
})
