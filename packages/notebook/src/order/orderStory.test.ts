import { type OrderResult, orderStations } from '@loopwright/study'
import { beforeAll, expect, test } from 'vitest'
import { shownView } from '../cells/cell.ts'
import { cellTables } from '../cells/cellTables.ts'
import { movedStations } from '../study/movedStations.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { orderStory } from './orderStory.ts'

/** what stands beside the test should move away from it */
const scenario = movedStations(testLine(), { S2: 'Z06' })
const options = { scenarioFile: 'ring.yaml' }
let result: OrderResult
beforeAll(async () => {
  const request = { move: [1], zones: [3, 4, 5], firstStage: 10, check: 6, mine: [0, 4, 6] }
  result = await orderStations(scenario.line, request, { seed: '1', workers: 0 })
})

test('the order to take is named by what moves, in answer, table and drawing', () => {
  const { answer, table, plans } = orderStory(scenario, result, options)
  expect(answer.sentences[0]).toBe('A new order helps: put S2 at Z04.')
  expect(answer.sentences[1]).toMatch(
    /^That makes [\d.]+ more units a shift than today’s order \(95\u202f%: [\d.]+ to [\d.]+\), the most of 2 alternatives\.$/,
  )
  const { rows } = shownView(table!.views)
  expect(rows.find(({ marked }) => marked)!.cells[0]).toBe('S2 at Z04')
  expect(rows.map(({ cells }) => cells[0]).sort()).toEqual(['S2 at Z04', 'S2 at Z05 (given)', 'Today’s order'])
  expect(plans.map(({ id, pageOnly }) => [id, pageOnly])).toEqual([
    ['order-plan-today', true],
    ['order-plan-chosen', true],
    ['order-plan-given', true],
  ])
})

test('terminal and page tell the same; files hold what every order made', () => {
  const story = orderStory(scenario, result, { ...options, id: 'order-2' })
  expect(toldTwice(story.cells)).toEqual(TOLD_TWICE)
  const tables = new Map(cellTables(story.cells).map(({ name, rows }) => [name, rows]))
  expect(tables.get('order-2-orders')).toHaveLength(result.candidates.length)
  expect(tables.get('order-2-units')).toHaveLength(result.candidates.reduce((sum, { units }) => sum + units.length, 0))
  expect(tables.get('order-2-units')![0]).toEqual(['today’s order', 0, result.candidates[0]!.units[0]])
  expect([...tables.keys()]).toContain('order-2-plan-given')
})

test('a stop before the choice is told, and nothing else of the result', () => {
  const stopped = {
    ...result,
    partial: true,
    winner: null,
    choice: null,
    table: null,
    candidates: [],
    gain: null,
    mineGain: null,
    todayMean: null,
  }
  const story = orderStory(scenario, stopped, options)
  expect(story).toMatchObject({ table: null, plans: [], sure: { sentences: [] } })
  expect(story.answer.sentences).toEqual(['No answer yet: the study was stopped before an order was chosen.'])
  expect(story.warnings.map(({ title }) => title)).toEqual(['Stopped early'])
  expect(toldTwice(story.cells)).toEqual(TOLD_TWICE)
})
