import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { SMALL_LINE } from './memoryShell.ts'
import { orderPlans } from './orderPlans.ts'

const scenario = readScenario(SMALL_LINE, 'small.yaml').scenario!
const candidates = [
  [0, 4, 7],
  [0, 5, 7],
  [0, 2, 7],
].map((places) => ({ places }))
const plans = (winner: number | null, mine: number | null) => orderPlans(scenario, { candidates, today: 0, winner, mine } as never)

test('today, the chosen and the given order, each once', () => {
  expect(plans(1, 2).map(({ id }) => id)).toEqual(['plan-today', 'plan-chosen', 'plan-given'])
  expect(plans(0, null).map(({ id }) => id)).toEqual(['plan-today'])
  expect(plans(1, 1).map(({ id }) => id)).toEqual(['plan-today', 'plan-chosen'])
  expect(plans(null, null)).toEqual([])
})

test('the station stands in its new zone, and the finding says so', () => {
  const figure = plans(1, null)[1]!.views.of[0]!.content
  expect(figure.finding).toBe('The chosen order: B at Z06. A Z01, B Z06, C Z08.')
  const { picture } = figure
  expect(picture.kind === 'plan' && picture.zones.map(({ station }) => station?.title ?? null)).toEqual([
    'Load',
    null,
    null,
    null,
    null,
    'Fit',
    null,
    'Unload',
    null,
    null,
  ])
})
