import { readScenario } from '@loopwright/scenario'
import { sweepHere } from '@loopwright/study'
import { expect, test } from 'vitest'
import { SMALL_LINE } from '../memoryShell.ts'
import { stationName, stationTable } from './stationTable.ts'

const count = sweepHere(readScenario(SMALL_LINE, 'line.yaml').scenario!.line, [4], { seed: '1', replications: 3 }).counts[0]!
const shares = [0.5, 0.1, 0.05, 0, 0, 0.1, 0.1, 0.05, 0.04, 0.06]

test('eight columns at most, every state in one of them', () => {
  const table = stationTable({ ...count, stations: [{ ...count.stations[0]!, name: 'A', title: 'Load', shares }] }, 'the second shift')
  expect(table.columns.map((column) => column.head.replaceAll('\n', ''))).toEqual([
    'Station',
    'working',
    'exchan-ging',
    'blocked',
    'starved',
    'waiting',
    'stopped',
    'break',
  ])
  expect(table.rows[0]!.cells).toEqual(['A Load', '60', '10', '10', '5', '5', '4', '6'])
})

test('waiting is left out where nobody waits; real rows add up to 100', () => {
  const table = stationTable(count, 'the second shift')
  expect(table.columns.map((column) => column.head)).not.toContain('waiting')
  for (const { shares: mine } of count.stations) expect(mine.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
})

test('names', () => {
  expect(stationName('S1', 'S1')).toBe('S1')
  expect(stationName('S1', 'Load')).toBe('S1 Load')
  expect(stationName('S1', 'A very long title of a station')).toBe('S1 A very long title of a…')
})
