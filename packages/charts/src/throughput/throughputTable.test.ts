import { expect, test } from 'vitest'
import { baseLineSweep } from '../examples/baseLine.ts'
import { throughputTable } from './throughputTable.ts'

const sweep = baseLineSweep()
const headsOf = (table: ReturnType<typeof throughputTable>, all = true): string[] =>
  table.columns.filter(({ pageOnly }) => all || !pageOnly).map(({ head }) => head.replaceAll('\n', ' '))

test('heads carry units, level, plan, and whether the law is exact', () => {
  const table = throughputTable(sweep, 'shift', 10)
  expect(table.caption).toBe('Output by number of carriers; plan 320 units per shift')
  expect(headsOf(table, false)).toEqual([
    'Carriers',
    'Shifts run',
    'Units per shift, mean ± 95 %',
    'P10',
    'P50',
    'P90',
    'Plan met in',
    'Limited by (law)',
  ])
  expect(headsOf(table)).toContain('Law, estimate, units')
  const exact = headsOf(throughputTable({ ...sweep, plan: null, law: { ...sweep.law!, exact: true } }, 'shift', 10))
  expect(exact).toContain('Law, exact, units')
  expect(exact).not.toContain('Plan met in')
})

test('the chosen row is marked, and rounded by its interval', () => {
  const rows = throughputTable(sweep, 'shift', 10).rows
  expect(rows.filter(({ marked }) => marked).map(({ cells }) => cells.slice(0, 9))).toEqual([
    ['10', '200', '330 ± 1', '316', '330', '344', '85 %', 'station', '358'],
  ])
  // 17 carriers: 1 hole of 89.1 s a lap, 27 000 s of work
  expect(rows.at(-1)!.cells.slice(7, 9)).toEqual(['space', '303'])
})

test('the values are those of the sweep, in full', () => {
  const table = throughputTable(sweep, 'shift', 10)
  const fields = table.columns.flatMap((column) => column.fields.map(({ name }) => name))
  const ten = sweep.counts.find(({ carriers }) => carriers === 10)!
  const value = (name: string) => table.rows[sweep.counts.indexOf(ten)]!.values[fields.indexOf(name)]
  expect([value('carriers'), value('units_mean'), value('plan_met'), value('lap_s')]).toEqual([
    10,
    ten.mean!.mean,
    ten.meetsPlan!.share,
    ten.lapSecondsMean,
  ])
})

test('a count that stood still in some runs has no mean of both kinds of runs; without replications there are dashes', () => {
  const counts = [
    { ...sweep.counts[0]!, gridlocks: 2 },
    { ...sweep.counts[1]!, mean: null, p10: null, p50: null, p90: null, meetsPlan: null, units: [], replications: 0 },
  ]
  const table = throughputTable({ ...sweep, counts, answer: null }, 'shift', 10)
  expect(headsOf(table, false)).toHaveLength(8)
  expect(table.rows[0]!.cells.slice(2, 6)).toEqual(['2 of 200 stood still', '–', '–', '–'])
  expect(table.rows[0]!.tone).toBe('bad')
  expect(table.rows[1]!.cells.slice(0, 9)).toEqual(['6', '0', '–', '–', '–', '–', '–', 'carrier', '302'])
})
