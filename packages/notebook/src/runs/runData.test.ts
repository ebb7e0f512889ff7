import type { RunResult } from '@loopwright/line'
import { replicate } from '@loopwright/study'
import { expect, test } from 'vitest'
import { cellTables, type FileTable } from '../cells/cellTables.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { runData } from './runData.ts'

const { line } = testLine()
const run: RunResult = (await replicate(line, { replications: 1 }, { seed: '1', workers: 0 }))[0]!
const files = cellTables(runData(run))
const named = (name: string): FileTable => files.find((file) => file.name === name)!
const sum = (values: readonly (number | null)[]): number => values.reduce<number>((all, value) => all + (value ?? 0), 0)
const column = (file: FileTable, name: string): number[] => file.rows.map((row) => Number(row[file.columns.indexOf(name)]))
const windowSeconds = line.window.endSeconds - line.window.warmupSeconds

test('one file each, and one that says what their columns are', () =>
  expect(files.map(({ name }) => name)).toEqual([
    'outputs',
    'output_hours',
    'station_seconds',
    'zone_seconds',
    'carrier_seconds',
    'stop_seconds',
    'columns',
  ]))

test('each unit has its instant, and the hours hold all of them', () => {
  expect(column(named('outputs'), 'unit')).toEqual(Array.from({ length: run.output }, (_, index) => index + 1))
  const instants = column(named('outputs'), 'seconds')
  expect(instants).toEqual([...instants].sort((a, b) => a - b))
  expect(Math.min(...instants)).toBeGreaterThan(line.window.warmupSeconds)
  expect(sum(column(named('output_hours'), 'units'))).toBe(run.output)
})

test('the states of a station, a zone and a carrier fill the window', () => {
  for (const name of ['station_seconds', 'zone_seconds', 'carrier_seconds']) {
    const file = named(name)
    const states = file.columns.filter((each) => each.endsWith('_s') && each !== 'longest_block_s')
    expect(file.rows.length).toBeGreaterThan(2)
    // seconds lie on a grid of 2⁻²⁰; what a table cannot lose is more than a thousandth
    for (const [row] of file.rows.entries()) expect(sum(states.map((state) => column(file, state)[row]!))).toBeCloseTo(windowSeconds, 3)
  }
})

test('stops of each source, and the break of the shift', () => {
  const stops = named('stop_seconds')
  const causes = stops.rows.map(([cause]) => cause)
  expect(causes).toEqual([...line.breakdowns.map(({ name }) => name), 'break'])
  expect(stops.rows.at(-1)).toEqual(['break', 1, 600])
})
