import { stopGroups } from '@loopwright/scenario'
import { findLosses, type LossResult } from '@loopwright/study'
import { beforeAll, expect, test } from 'vitest'
import { shownView } from '../cells/cell.ts'
import { cellTables } from '../cells/cellTables.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { lossStory } from './lossStory.ts'

const options = { scenarioFile: 'ring.yaml' }
const scenario = testLine()
let result: LossResult
beforeAll(async () => {
  const request = { replications: 3, stopGroups: stopGroups(scenario), bestCarriers: 4 }
  result = await findLosses(scenario.line, request, { seed: '1', workers: 0 })
})

const number = (cell: string): number => Number(cell.split(' ± ')[0]!.replace('−', '-').replace('+', ''))

test('from the ideal to the forecast: what the causes take sums to the gap, as shown and in full', () => {
  const { table } = shownView(lossStory(scenario, result, options).chart!.views)
  const [ideal, ...rest] = table.rows.map(({ cells }) => number(cells[1]!))
  const forecast = rest.pop()!
  const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0)
  // each cell is rounded, to units where its interval is wide
  expect(Math.abs(ideal! + sum(rest) - forecast)).toBeLessThan(0.6 * (rest.length + 2))
  const place = table.columns.flatMap(({ fields }) => fields).findIndex(({ name }) => name === 'units')
  const full = table.rows.map(({ values }) => Number(values[place]))
  expect(sum(full.slice(1, -1))).toBeCloseTo(-result.gap!.mean, 9)
  expect(full[0]! - full.at(-1)!).toBeCloseTo(result.gap!.mean, 9)
  expect(result.causes.map(({ name }) => name)).toEqual(expect.arrayContaining(['jam', 'tool', 'breaks', 'exchange at S3']))
  expect(table.rows.map(({ cells }) => cells[0]).slice(1, -1)).toEqual(result.causes.map(({ name }) => name).reverse())
})

test('terminal and page tell the same; files hold the gap and what the causes are worth together', () => {
  const story = lossStory(scenario, result, options)
  expect(toldTwice(story.cells)).toEqual(TOLD_TWICE)
  const tables = new Map(cellTables(story.cells).map(({ name, rows }) => [name, rows]))
  expect(tables.get('losses-causes')).toHaveLength(result.causes.length + 2)
  expect(tables.get('losses-together')!.map(([, units]) => units)).toEqual([result.gap!.mean, result.interaction!.mean])
})

test('below 2 replications there is an answer, and nothing else of the result', () => {
  const none = { ...result, partial: true, forecast: null, ideal: null, gap: null, interaction: null, causes: [] }
  const story = lossStory(scenario, none, options)
  expect(story).toMatchObject({ chart: null, sure: { sentences: [] } })
  expect(story.answer.sentences).toEqual(['No answer yet: losses need at least 2 simulated shifts.'])
  expect(story.warnings).toHaveLength(1)
  expect(cellTables(story.cells).map(({ name }) => name)).not.toContain('losses-together')
})

test('a line that stands still is shouted, and what safety stops cost is told with a caution', () => {
  const told = (change: Partial<LossResult>): string[] =>
    lossStory(scenario, { ...result, ...change }, options).warnings.map(({ title }) => title)
  expect(told({})).toEqual([])
  expect(told({ gridlocks: 2 })).toEqual(['Gridlock: the loop stands still'])
  const [cell] = lossStory(scenario, { ...result, gridlocks: 2 }, options).warnings
  expect(cell!.markdown).toContain('stood still for good in 2 of 3 shifts')
  expect(told({ causes: [{ ...result.causes[0]!, kind: 'safety stops', name: 'safety stops' }] })).toEqual(['Safety stops protect people'])
})
