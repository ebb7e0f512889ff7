import { gainText } from '@loopwright/charts'
import { type DriverResult, findDrivers } from '@loopwright/study'
import { beforeAll, expect, test } from 'vitest'
import { shownView } from '../cells/cell.ts'
import { cellTables } from '../cells/cellTables.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { driverStory } from './driverStory.ts'

const scenario = testLine((text) => text.replace(/stops:[\s\S]*/, ''))
const options = { scenarioFile: 'ring.yaml' }
let result: DriverResult
beforeAll(async () => {
  result = await findDrivers(scenario.line, { replications: 3 }, { seed: '1', workers: 0 })
})

test('the slowest station limits the line: what less of its time brings, how near its limit the line is, what it waits for', () => {
  const { answer, chart, waiting, wholes } = driverStory(scenario, result, options)
  const best = result.drivers[0]!
  expect(answer.sentences[0]).toMatch(
    /^What limits the line: S3 Test, which can do about \d+ units a shift .*; the line makes \d+\u202f% of that\.$/,
  )
  expect(answer.sentences[1]).toBe(`Of what takes time, 1 % less of S3 Test brings most: ${gainText(best)} more output.`)
  const { rows } = shownView(chart!.views).table
  expect(rows.length).toBe(result.drivers.length)
  expect(rows[0]).toMatchObject({ marked: true, cells: ['S3 Test', expect.any(String), expect.any(String), best.unitsOfStep.toFixed(1)] })
  expect(shownView(waiting!.views).rows.find(({ marked }) => marked)?.cells[0]).toBe('S3 Test')
  expect(
    shownView(wholes!.views)
      .rows.map(({ cells }) => cells[0])
      .sort(),
  ).toEqual(['One carrier fewer than 4', 'One carrier more than 4'])
})

test('terminal and page tell the same; files hold every number', () => {
  const story = driverStory(scenario, { ...result, partial: true, replications: 9 }, options)
  expect(toldTwice(story.cells)).toEqual(TOLD_TWICE)
  expect(story.warnings.map(({ markdown }) => markdown)).toEqual(['3 of 9 shifts are simulated. The intervals are wider than asked for.'])
  const tables = new Map(cellTables(story.cells).map(({ name, rows }) => [name, rows]))
  expect(tables.get('drivers-ranking')).toHaveLength(result.drivers.length)
  expect(tables.get('drivers-wholes')).toHaveLength(result.wholeChanges.length)
})

test('without two replications there is an answer, and nothing else of the result', () => {
  const none = { ...result, drivers: [], limits: [], base: null, wholeChanges: [], diagnosis: null, explanation: null }
  const story = driverStory(scenario, none, options)
  expect(story).toMatchObject({ chart: null, waiting: null, wholes: null, sure: { sentences: [] } })
  expect(story.answer.sentences).toEqual(['No answer yet: what limits the loop needs at least 2 simulated shifts.'])
  expect(toldTwice(story.cells)).toEqual(TOLD_TWICE)
})
