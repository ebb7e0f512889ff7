import { expect, test } from 'vitest'
import { baseLineSweep } from './examples/baseLine.ts'
import { throughputTable } from './throughputTable.ts'

const sweep = baseLineSweep()

test('heads carry units, level, plan, and whether the law is exact', () => {
  expect(throughputTable(sweep, 'shift').columns.map(({ head }) => head)).toEqual([
    'Carriers',
    'Mean ± 95 % (units)',
    'P10 (units)',
    'P50 (units)',
    'P90 (units)',
    'Meets 320 (%)',
    'Law, estimate (units)',
    'Limited by',
  ])
  const exact = throughputTable({ ...sweep, plan: null, law: { ...sweep.law!, exact: true } }, 'shift').columns.map(({ head }) => head)
  expect(exact).toContain('Law, exact (units)')
  expect(exact.some((head) => head.startsWith('Meets'))).toBe(false)
})

test('the chosen row is marked, and rounded by its interval', () => {
  const rows = throughputTable(sweep, 'shift').rows
  expect(rows.filter(({ marked }) => marked).map(({ cells }) => cells)).toEqual([
    ['10', '330 ± 1', '316', '330', '344', '85', '358', 'station'],
  ])
  // 17 carriers: 1 hole of 89.1 s a lap, 27 000 s of work
  expect(rows.at(-1)!.cells.slice(-2)).toEqual(['303', 'space'])
})

test('a standstill has a column of its own; without replications there are dashes', () => {
  const counts = [
    { ...sweep.counts[0]!, gridlocks: 2 },
    { ...sweep.counts[1]!, mean: null, p10: null, p50: null, p90: null, meetsPlan: null, units: [] },
  ]
  const table = throughputTable({ ...sweep, counts, answer: null }, 'shift')
  expect(table.columns.at(-1)).toMatchObject({ head: 'Stood still', pageOnly: true })
  expect(table.rows[1]!.cells).toEqual(['6', '–', '–', '–', '–', '–', '302', 'carrier', '0'])
})
