import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { period } from '../sweep/period.ts'
import { forecastOf } from './forecastOf.ts'
import { forecastTable, overtimeTable } from './forecastTables.ts'

const scenario = testLine((text) => text.replace('250 per shift', '283 per shift'))
const sweep = await sweepCarriers(scenario.line, { counts: [4], replications: 25, plan: 283 }, { seed: '1', workers: 0 })
const result = forecastOf(scenario, sweep, 1)
const words = period(scenario)

test('the files have the numbers of the result in full; an hour is that of the net time', () => {
  const table = forecastTable(result, words)
  const at = table.columns.flatMap(({ fields }) => fields.map(({ name }) => name)).indexOf('units_mean')
  expect(table.rows[1]!.values[at]).toBe(result.shift.mean!.mean)
  expect(table.rows[0]!.values[at]).toBeCloseTo((result.shift.mean!.mean * 3600) / result.netSeconds, 9)
})

test('overtime counts the shifts without any', () => {
  const { rows } = overtimeTable(result, words)
  const without = result.overtime!.minutes.filter((minutes) => minutes === 0).length
  expect(rows.at(-1)!.cells[1]).toBe(`${without} of 25`)
})
