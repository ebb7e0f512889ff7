import { type GridResult, runGrid } from '@loopwright/study/compare'
import { beforeAll, expect, test } from 'vitest'
import { shownView } from '../cells/cell.ts'
import { RING, testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { gridLines } from './gridLines.ts'
import { type GridStory, gridStory } from './gridStory.ts'

const scenario = testLine()
const options = { scenarioFile: 'ring.yaml' }
let result: GridResult
let story: GridStory
beforeAll(async () => {
  const source = { scenario, text: RING, files: () => null }
  const { factors, points } = gridLines(source, { carriers: [2, 3, 4], set: { 'drive.speed': ['20 m/min', '30 m/min'] } })
  const base = { line: scenario.line, plan: 250 }
  result = await runGrid(points, { factors, base, replications: 4 }, { seed: '1', workers: 0 })
  story = gridStory(scenario, result, options)
})

test('answer first, then the warnings, the curves with their means, how sure, the heat table, what it rests on', () => {
  const ids = story.cells.map(({ id }) => id)
  expect(ids.slice(0, 5)).toEqual(['grid-answer', 'warning-grid-edge', 'grid-curves', 'grid-sure', 'grid-table'])
  expect(new Set(ids).size).toBe(ids.length)
  expect(story.question).toBe('What do the number of carriers and drive.speed do to the output?')
  expect(gridStory(scenario, result, { ...options, id: 'grid-2' }).answer.id).toBe('grid-2-answer')
})

test('the tables have the numbers of the study, in full behind the texts', () => {
  const means = shownView(story.curves!.views).table
  expect(means.rows.map(({ values }) => values.slice(0, 2))).toEqual(
    ['2', '3', '4'].map((count, index) => [count, result.points[2 * index]!.mean!.mean]),
  )
  expect(means.columns.flatMap(({ fields }) => fields.map(({ name }) => name)).slice(0, 2)).toEqual(['carriers', 'units_20_m_min_mean'])
  const settings = shownView(story.heat!.views).table
  expect(settings.rows).toHaveLength(6)
  expect(settings.rows.map(({ cells }) => cells.at(-1)).filter((cell) => cell === 'base')).toHaveLength(1)
  expect(settings.rows[0]!.values.slice(0, 4)).toEqual(['2', '20 m/min', 4, result.points[0]!.mean!.mean])
})

test('one factor has no heat table', () => {
  const factors = result.factors.slice(0, 1)
  const points = result.points.filter(({ levels }) => levels[1] === 1).map((point) => ({ ...point, levels: point.levels.slice(0, 1) }))
  const effects = { ...result.effects!, main: result.effects!.main.slice(0, 1), interactions: [] }
  const one = gridStory(scenario, { ...result, factors, points, effects, base: 2, best: 2, maybeBest: [2], nearBest: [2] }, options)
  expect(one.heat).toBeNull()
  expect(shownView(one.curves!.views).table.rows).toHaveLength(3)
  expect(one.question).toBe('What does the number of carriers do to the output?')
})

test('what was stopped, stood still or lies at the end is said, and only then', () => {
  expect(story.warnings.map(({ id }) => id)).toEqual(['warning-grid-edge'])
  expect(story.warnings[0]!.markdown).toContain('drive.speed 30 m/min: the greatest level tried')
  const stuck = { ...result, partial: true, best: null, nearBest: [], points: result.points.map((point) => ({ ...point, gridlocks: 1 })) }
  const [partial, still] = gridStory(scenario, stuck, options).warnings
  expect(partial!.markdown).toContain('4 of 4 shifts are simulated')
  expect(still!.markdown).toContain('- 2 carriers with drive.speed 20 m/min: in 1 of 4 shifts')
  const both = { ...result, nearBest: [0, 5] }
  expect(gridStory(scenario, both, options).warnings).toEqual([])
})

test('stopped before anything was run: it says so, and draws nothing', () => {
  const points = result.points.map((point) => ({ ...point, units: [], mean: null, p10: null, meetsPlan: null, toBase: null }))
  const none = gridStory(scenario, { ...result, partial: true, points, best: null, maybeBest: [], nearBest: [], effects: null }, options)
  expect(none.answer.sentences).toEqual(['No answer yet: a grid needs at least 2 simulated shifts of every setting.'])
  expect([none.heat, none.curves, none.sure.sentences]).toEqual([null, null, []])
})
