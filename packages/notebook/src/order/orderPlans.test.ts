import type { OrderResult } from '@loopwright/study'
import { expect, test } from 'vitest'
import { shownView } from '../cells/cell.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { orderPlans } from './orderPlans.ts'

const scenario = testLine()
const candidates = [
  [0, 3, 6],
  [0, 4, 6],
  [0, 2, 6],
].map((places) => ({ places }))
const plans = (winner: number | null, mine: number | null) =>
  orderPlans(scenario, { candidates, today: 0, winner, mine } as unknown as OrderResult, 'order')
const told = (winner: number | null, mine: number | null): string[] => plans(winner, mine).map(({ views }) => shownView(views).finding)

test('today’s, the chosen and the given order, each once', () => {
  expect(told(1, 2)).toEqual(['Today’s order.', 'The order chosen: S2 at Z05.', 'The order given: S2 at Z03.'])
  expect(told(0, null)).toEqual(['Today’s order.'])
  expect(told(0, 0)).toEqual(['Today’s order.'])
  expect(told(1, 1)).toEqual(['Today’s order.', 'The order given, which is the one chosen: S2 at Z05.'])
  expect(told(null, null)).toEqual([])
})

test('the station stands in its new zone, in the picture and in the table', () => {
  const { picture, table } = shownView(plans(1, null)[1]!.views)
  expect(picture.kind === 'plan' && picture.zones.findIndex(({ station }) => station?.title === 'Fit')).toBe(4)
  expect(table.rows.map(({ cells }) => cells)).toEqual([
    ['S1', 'Load and unload', 'Z01'],
    ['S2', 'Fit', 'Z05'],
    ['S3', 'Test', 'Z07'],
  ])
})
