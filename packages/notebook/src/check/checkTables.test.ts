import { expect, test } from 'vitest'
import { read } from '../../../../tests/helpers/checkedLine.ts'
import { EXACT_LINE, OPEN_LINE, SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { stationsTable, stopsTable, variantsTable } from './checkTables.ts'

test('stations with their mean times, the slowest exchange marked', () => {
  const { facts } = read(SMALL_LINE)
  const table = stationsTable(facts)
  expect(table.rows.map((row) => row.marked)).toEqual([false, true, false])
  expect(table.rows[1]!.cells).toEqual(['B Fit', 'Z05', 'work', '70.0', '0.0', '9.7', '79.7'])
  expect(table.columns.length).toBeLessThanOrEqual(8)
  expect(table.rows[1]!.values).toEqual([
    'B',
    'Z05',
    'work',
    70,
    0,
    facts.stations[1]!.moveAndClearSeconds,
    facts.stations[1]!.exchangeSeconds,
  ])
})

test('where there is no law an exchange is not known, and its term not explained', () => {
  const table = stationsTable(read(OPEN_LINE).facts)
  expect(table.rows.map(({ cells }) => cells.slice(-2))).toEqual([
    ['–', '–'],
    ['–', '–'],
  ])
  expect(table.note).not.toContain('Exchange')
  expect(stationsTable(read(EXACT_LINE).facts).note).toContain('Exchange')
})

test('variants with their shares', () => {
  const table = variantsTable({ variants: [{ name: 'a', share: 0.125 }] })
  expect(table.rows[0]).toMatchObject({ cells: ['a', expect.stringMatching(/^12\.5\s%$/)], values: ['a', 0.125] })
})

test('stops on either clock', () => {
  const { stops } = read(SMALL_LINE).facts
  expect(stopsTable({ stops }).rows[0]).toMatchObject({
    cells: ['jam', 'station B', '60 min of operation', '2 min'],
    values: ['jam', 'station B', 3600, 'operating', 120],
  })
  expect(stopsTable({ stops: [{ ...stops[0]!, clock: 'calendar' }] }).rows[0]!.cells[2]).toBe('60 min by the clock')
})
