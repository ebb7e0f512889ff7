import { beforeAll, expect, test } from 'vitest'
import { promiseRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { promiseOf, type PromiseRuns } from './promiseFigures.ts'
import { mappingTable, paceTable, unitsTable } from './promiseTables.ts'

let runs: PromiseRuns
beforeAll(async () => {
  runs = await promiseRuns(40)
})

test('shifts have quantiles, weeks of which there are too few have none', () => {
  const rows = unitsTable(runs).rows
  expect(rows[1]!.values[1]).toBe(runs.forecast.shift.p10!.point)
  expect(rows[3]!.cells.slice(1)).toEqual(['–', '–', '–'])
})

test('the pace names crew, takt and OEE; each time of ISO 22400 has its states', () => {
  const said = Object.fromEntries(paceTable(runs, promiseOf(runs)).rows.map(({ cells }) => [cells[0], cells[1]]))
  expect(said['People on a shift']).toBe('8')
  expect(said['Takt: net time over plan, s']).toBe('84.4')
  expect(Object.keys(said).some((what) => what.startsWith('OEE of Tightness test'))).toBe(true)
  expect(mappingTable().rows.map(({ cells }) => cells[1])).toEqual(expect.arrayContaining([expect.stringContaining('ADOT')]))
})
