import { readScenario } from '@loopwright/scenario'
import type { SweepCount, SweepResult } from '@loopwright/study'
import { sweepHere } from '@loopwright/study'
import { expect, test } from 'vitest'
import { tableText } from '../terminal.ts'
import { countTable } from './countTable.ts'

const YAML = `
format: 1
name: Ten zones
question: How many?
warmup: 10 min
length: 70 min
plan: 300 per clock hour
drive: { speed: 30 m/min, reaction: 0 s }
carriers: { count: 2, length: 1 m }
loop: 10 zones of 1 m
stations:
  S1: { zone: Z01, unload: { takeOff: 0 s }, load: { place: 6 s ± 20 % } }
  S2: { zone: Z05, work: { fit: 6 s ± 20 % } }
`

function sweep(counts: readonly number[]): SweepResult {
  const { scenario, problems } = readScenario(YAML, 'ten.yaml')
  if (scenario === null) throw new Error(JSON.stringify(problems))
  return sweepHere(scenario.line, counts, { seed: '1', replications: 5, plan: scenario.plan!.unitsPerWindow })
}

const WINDOW = { one: 'window', each: 'in 1 h', many: 'windows', plan: 300 }

test('a row for each count with the numbers of the result, the answer marked', () => {
  const result = sweep([2, 3, 4])
  const table = countTable(result, WINDOW)
  expect(table.rows.map(({ cells }) => cells[0])).toEqual(['2', '3', '4'])
  for (const [index, count] of result.counts.entries()) {
    const [mean, halfWidth] = table.rows[index]!.cells[1]!.split(' ± ').map(Number)
    expect(Math.abs(mean! - count.mean!.mean)).toBeLessThanOrEqual(5)
    expect(halfWidth!).toBeGreaterThanOrEqual(count.mean!.halfWidth / 1.5)
  }
  expect(table.rows.filter(({ marked }) => marked).map(({ cells }) => Number(cells[0]))).toEqual([result.answer!.chosen])
})

test('a terminal shows at most 8 columns in 80 characters', () => {
  const text = tableText(countTable(sweep([2, 4]), WINDOW))
  expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80)
  expect(countTable(sweep([2, 4]), WINDOW).columns.filter(({ pageOnly }) => !pageOnly).length).toBeLessThanOrEqual(8)
})

test('a column for the plan only where there is one, and for gridlock only where it came', () => {
  const result = sweep([2])
  const heads = (table: ReturnType<typeof countTable>): string => table.columns.map(({ head }) => head.replace('\n', ' ')).join('|')
  expect(heads(countTable(result, WINDOW))).toContain('Plan met in')
  expect(heads(countTable(result, { ...WINDOW, plan: null }))).not.toContain('Plan')
  expect(heads(countTable(result, WINDOW))).not.toContain('Gridlock')
  const still: SweepCount = { ...result.counts[0]!, gridlocks: 5 }
  expect(heads(countTable({ ...result, counts: [still] }, WINDOW))).toContain('Gridlock in runs')
})
