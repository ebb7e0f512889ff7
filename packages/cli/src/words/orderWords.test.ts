import { pairedDifference } from '@loopwright/stats'
import type { OrderResult } from '@loopwright/study'
import { expect, test } from 'vitest'
import { orderSentences, orderSure, orderTable, placesWords, shortPlaces } from './orderWords.ts'

const line = {
  zones: ['Z1', 'Z2', 'Z3', 'Z4'].map((name) => ({ name })),
  stations: ['A', 'B'].map((name, zone) => ({ name, title: name, zone })),
} as never
const candidate = (places: number[]) => ({ places, units: [], droppedAt: null })
const row = (system: number, mean: number, maybeBest: boolean) => ({ system, mean, low: -1, high: 2, maybeBest })
const result: OrderResult = {
  kind: 'station order',
  engineVersion: '0',
  seed: '1',
  partial: false,
  alpha: 0.05,
  delta: 2,
  firstStage: 20,
  candidates: [candidate([0, 1]), candidate([0, 2]), candidate([0, 3])],
  exhaustive: true,
  searched: 0,
  today: 0,
  mine: 2,
  winner: 1,
  choice: { selected: 1, stage: 31, eliminated: [], replicationsMax: 90, observations: 70, status: 'ok' },
  table: { n: 20, alpha: 0.05, t: 2, rows: [row(0, 100, false), row(1, 106, true), row(2, 105, true)] },
  gain: pairedDifference([106, 108, 107], [100, 102, 100]),
  mineGain: pairedDifference([100, 103, 99], [100, 102, 100]),
  todayMean: null,
}

test('an order is told by where it differs from today', () => {
  expect(placesWords(line, [0, 3])).toBe('B at Z4')
  expect(placesWords(line, [0, 1])).toBe('today’s order')
})

test('the choice, its gain, and what the order given by hand makes', () => {
  const [head, gain, mine] = orderSentences(result, line, 'shift')
  expect(head).toBe('Of 3 orders tried this one is chosen: B at Z3.')
  expect(gain).toMatch(/^The chosen order makes 6\.3 more per shift than today’s/)
  expect(mine).toMatch(/^No difference shown between the order given \(B at Z4\) and today’s/)
  expect(orderSentences({ ...result, winner: 0, gain: null }, line, 'shift')[0]).toContain('Today’s order stays')
})

test('what the choice promises, and what it does not', () => {
  const sure = orderSure(result, line, 'shift').join(' ')
  expect(sure).toContain('better than every other by 2.0 or more a shift it would be chosen in 95')
  expect(sure).toContain('1 other could not be told from the best')
  expect(orderSure({ ...result, exhaustive: false, searched: 70 }, line, 'shift').join(' ')).toContain('short runs looked at 70')
})

test('the table: best first, the chosen marked', () => {
  const { rows } = orderTable(result, line, 'shift')
  expect(rows.map(({ cells, marked }) => [cells[0], marked])).toEqual([
    ['B at Z3', true],
    ['B at Z4 (given)', false],
    ['today’s order', false],
  ])
})

test('a long order is cut after a whole place', () => {
  expect(shortPlaces('S3 at Z17, S4 at Z15, S5 at Z13, S6 at Z07')).toBe('S3 at Z17, S4 at Z15, S5 at Z13, …')
  expect(shortPlaces('S3 at Z17, S4 at Z15')).toBe('S3 at Z17, S4 at Z15')
})
