import type { LineSpec } from '@loopwright/line'
import { pairedDifference } from '@loopwright/stats'
import type { OrderResult } from '@loopwright/study'
import { expect, test } from 'vitest'
import { orderSentences, orderSure, placesWords } from './orderWords.ts'

const line = {
  zones: ['Z1', 'Z2', 'Z3', 'Z4'].map((name) => ({ name })),
  stations: ['A', 'B'].map((name, zone) => ({ name, title: name, zone })),
} as unknown as LineSpec
const words = { one: 'shift', each: 'a shift', many: 'shifts' }
const candidate = (places: number[]) => ({ places, units: [], droppedAt: null })
const row = (system: number, mean: number, maybeBest: boolean) => ({ system, mean, low: -1, high: 2, maybeBest })
const gain = pairedDifference([106, 108, 107], [100, 102, 100])
const unsure = pairedDifference([100, 103, 99], [100, 102, 100])
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
  mine: null,
  winner: 1,
  choice: { selected: 1, stage: 31, eliminated: [], replicationsMax: 90, observations: 70, status: 'ok' },
  table: { n: 20, alpha: 0.05, t: 2, rows: [row(0, 100, false), row(1, 106, true), row(2, 105, true)] },
  gain,
  mineGain: null,
  todayMean: null,
}
const said = (change: Partial<OrderResult>): string[] => orderSentences(line, { ...result, ...change }, words)
const sure = (change: Partial<OrderResult>): string => orderSure({ ...result, ...change }, words).join(' ')

test('an order is told by where it differs from today’s', () => {
  expect(placesWords(line, [2, 3])).toBe('A at Z3, B at Z4')
  expect(placesWords(line, [0, 1])).toBe('today’s order')
})

test('today’s order stays: it is no alternative to itself', () => {
  expect(said({ winner: 0, gain: null })).toEqual(['Keep today’s order: none of the 2 alternatives makes more.'])
  expect(said({ winner: 0, gain: null, mine: 2, mineGain: unsure })).toEqual([
    'Keep today’s order: none of the 2 alternatives, the order given among them, makes more.',
    expect.stringMatching(/^No difference is shown between the order given \(B at Z4\) and today’s order \(95\u202f%: /),
  ])
  const two = result.candidates.slice(0, 2)
  expect(said({ winner: 0, gain: null, candidates: two })).toEqual(['Keep today’s order: the one alternative does not make more.'])
  expect(said({ winner: 0, gain: null, candidates: two, mine: 1 })[0]).toBe('Keep today’s order: the order given does not make more.')
})

test('another is advised only where it is shown to make more', () => {
  expect(said({})[0]).toMatch(
    /^Put B at Z3: that makes 6\.3 more units a shift than today’s order \(95\u202f%: 4\.9 to 7\.8\), the most of 2 alternatives\.$/,
  )
  expect(said({ mine: 1 })[0]).toMatch(/^Put B at Z3, the order given: that makes/)
  expect(said({ gain: unsure, mine: 1 })[0]).toMatch(/^B at Z3, the order given, was chosen of 2 alternatives, but/)
  expect(said({ gain: unsure })[0]).toMatch(
    /^B at Z3 was chosen of 2 alternatives, but measured again no difference from today’s order is shown \(/,
  )
  expect(said({ gain: pairedDifference([100, 102, 100], [106, 108, 107]) })[0]).toMatch(
    /^Keep today’s order: B at Z3 was chosen, but measured again that makes 6\.3 fewer units a shift than today’s \(/,
  )
  expect(said({ gain: pairedDifference([3, 4], [3, 4]) })[0]).toBe(
    'B at Z3 was chosen of 2 alternatives, but measured again it makes exactly what today’s order makes.',
  )
  expect(said({ gain: null })[0]).toBe('Best of 2 alternatives is B at Z3; stopped before it was measured beside today’s order.')
  expect(said({ gain: pairedDifference([3, 4], [1, 2]), candidates: result.candidates.slice(0, 2) })[0]).toBe(
    'Put B at Z3: that makes 2 more units a shift than today’s order, in each of the shifts simulated.',
  )
})

test('what today’s order makes', () => {
  const todayMean = {
    n: 9,
    mean: 330.4,
    sd: 1,
    level: 0.95,
    halfWidth: 2,
    low: 328.4,
    high: 332.4,
    status: 'ok',
    skewness: 0,
    method: 'Hall',
  } as const
  expect(said({ todayMean }).at(-1)).toBe('Today’s order makes 330 ± 2 units a shift.')
  expect(said({ todayMean: { ...todayMean, halfWidth: 0 } }).at(-1)).toBe('Today’s order makes 330 units a shift.')
  expect(said({ winner: null })).toEqual(['No answer yet: the study was stopped before an order was chosen.'])
})

test('what the choice promises, and what it does not', () => {
  expect(sure({})).toContain('If one of the 3 orders is better than every other by 2.0 units a shift or more, 95')
  expect(sure({})).toContain(
    'After 20 simulated shifts of each order, 1 other order could still be the best; the choice went on among them up to 31 shifts each.',
  )
  expect(sure({ choice: { ...result.choice!, stage: 20 } })).toContain('1 other order could still be the best. All')
  expect(sure({ table: null })).toContain('After 20 simulated shifts of each order no other could be the best.')
  expect(sure({ exhaustive: false, searched: 70 })).toContain('short runs looked at 70')
  expect(sure({})).toContain('so that having been chosen does not flatter it')
  expect(sure({ gain: null })).not.toContain('flatter')
  expect(orderSure({ ...result, winner: null }, words)).toEqual([])
})
