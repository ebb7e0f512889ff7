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
const table = { rows: [0, 1, 2].map((system) => ({ system, mean: 10 - system })) }
const plans = (winner: number | null, mine: number | null) =>
  orderPlans(scenario, { candidates, today: 0, winner, mine, table } as unknown as OrderResult, 'order')
const told = (winner: number | null, mine: number | null): string[] => plans(winner, mine).map(({ views }) => shownView(views).finding)

test('today’s, the chosen and the given order, each once', () => {
  expect(told(1, 2)).toEqual(['Today’s order.', 'The order chosen: S2 at Z05.', 'The order given: S2 at Z03.'])
  expect(told(0, 2)).toEqual(['Today’s order.', 'The order given: S2 at Z03.'])
  expect(told(1, 1)).toEqual(['Today’s order.', 'The order given, which is the one chosen: S2 at Z05.'])
  expect(told(null, null)).toEqual([])
})

test('where today’s order is kept, the best of the others stands beside it', () => {
  expect(told(0, null)).toEqual(['Today’s order.', 'The best of the others: S2 at Z05.'])
  expect(told(0, 0)).toEqual(['Today’s order.', 'The best of the others: S2 at Z05.'])
})

test('before and after: what moves is marked in both', () => {
  const marks = (index: number): (string | undefined)[] => {
    const { picture } = shownView(plans(1, null)[index]!.views)
    return picture.kind === 'plan' ? picture.zones.flatMap(({ station }) => (station === null ? [] : [station.moved])) : []
  }
  expect([marks(0), marks(1)]).toEqual([
    [undefined, 'moves to Z05', undefined],
    [undefined, 'moved from Z04', undefined],
  ])
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
