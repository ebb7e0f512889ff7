import { hereRunner, type OrderResult, stationOrder } from '@loopwright/study'
import { beforeAll, expect, test } from 'vitest'
import { shownView } from '../cell.ts'
import { movedStations } from '../study/movedStations.ts'
import { testLine } from '../study/testLine.test.ts'
import { orderSentences, orderStory, placesWords } from './orderStory.ts'

const good = testLine()
/** what stands beside the test should move away from it */
const scenario = movedStations(good, { S2: 'Z06' })
const shift = { one: 'shift', each: 'a shift', many: 'shifts', plan: null }
let result: OrderResult
beforeAll(async () => {
  const request = { seed: '1', move: [1], zones: [3, 4, 5], firstStage: 10, check: 6, mine: [0, 4, 6] }
  result = await stationOrder(scenario.line, request, hereRunner())
})

test('the chosen order is named by what moves, with its gain, in answer, table and drawing', () => {
  const { answer, table, plans } = orderStory(scenario, result)
  expect(answer.sentences[0]).toBe('Of 3 orders tried, S2 at Z04 is chosen.')
  expect(answer.sentences[1]).toMatch(/^“the chosen order” makes [\d.]+ more units a shift than “today’s order” in the same random worlds/)
  expect(answer.sentences[2]).toMatch(/^“S2 at Z05” makes/)
  const { rows } = shownView(table!.views)
  expect(rows.find(({ marked }) => marked)!.cells[0]).toBe('S2 at Z04')
  expect(rows.map(({ cells }) => cells[0]).sort()).toEqual(['S2 at Z04', 'S2 at Z05 (by hand)', 'today’s order'])
  expect(plans.map(({ views }) => shownView(views).finding)).toEqual(['Today’s order.', 'The chosen order: S2 at Z04.'])
  const [before, after] = plans.map(({ views }) => shownView(views).table.rows[1]!.cells)
  expect([before, after]).toEqual([
    ['S2 Fit', 'Z06'],
    ['S2 Fit', 'Z04'],
  ])
})

test('where today stays, or a stop came first, it is said', () => {
  const stays = { ...result, winner: result.today, gain: null, mine: null }
  expect(orderSentences(scenario, stays, shift)).toEqual(['Today’s order stays: none of 3 orders tried is chosen before it.'])
  expect(orderStory(scenario, stays).plans).toHaveLength(1)
  const stopped = { ...result, winner: null, choice: null, table: null, candidates: [] }
  expect(orderStory(scenario, stopped)).toMatchObject({ table: null, plans: [], answer: { sure: [] } })
  expect(placesWords(scenario, [0, 5, 6])).toBe('today’s order')
})
