import type { LineSpec } from '@loopwright/line'
import { pairedDifference } from '@loopwright/stats/worlds'
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

test('today’s order stays: first whether a new one helps, and no is said only where the limits of all others say so', () => {
  const stay = { winner: 0, gain: null }
  expect(said(stay)).toEqual(['No new order is shown to help: keep today’s, for none of the 2 alternatives is shown to make more.'])
  const worse = {
    ...result.table!,
    rows: [row(0, 100, true), { ...row(1, 90, false), high: 0 }, { ...row(2, 100, true), low: 0, high: 0 }],
  }
  expect(said({ ...stay, table: worse })).toEqual(['No new order helps: keep today’s, for none of the 2 alternatives makes more.'])
  expect(said({ ...stay, mine: 2, mineGain: unsure })).toEqual([
    'No new order is shown to help: keep today’s, for none of the 2 alternatives, the order given among them, is shown to make more.',
    expect.stringMatching(/^No difference is shown between the order given \(B at Z4\) and today’s order \(95\u202f%: /),
  ])
  const two = { ...stay, candidates: result.candidates.slice(0, 2), table: { ...worse, rows: worse.rows.slice(0, 2) } }
  expect(said(two)).toEqual(['No new order helps: keep today’s, for the one alternative does not make more.'])
  expect(said({ ...two, mine: 1 })[0]).toBe('No new order helps: keep today’s, for the order given does not make more.')
  expect(said({ ...two, table: null, mine: 1 })[0]).toBe(
    'No new order is shown to help: keep today’s, for the order given is not shown to make more.',
  )
})

test('another is advised only where it is shown to make more; the first sentence says whether', () => {
  expect(said({})).toEqual([
    'A new order helps: put B at Z3.',
    'That makes 6.3 more units a shift than today’s order (95\u202f%: 4.9 to 7.8), the most of 2 alternatives.',
  ])
  expect(said({ mine: 1 })[0]).toBe('A new order helps: put B at Z3, the order given.')
  expect(said({ gain: pairedDifference([3, 4], [1, 2]), candidates: result.candidates.slice(0, 2) })).toEqual([
    'A new order helps: put B at Z3.',
    'That makes 2 more units a shift than today’s order, in each of the shifts simulated.',
  ])
  const notShown = 'No new order is shown to help: keep today’s.'
  expect(said({ gain: unsure, mine: 1 })).toEqual([
    notShown,
    expect.stringMatching(/^B at Z3, the order given, was chosen of 2 alternatives, but/),
  ])
  expect(said({ gain: unsure })).toEqual([
    notShown,
    expect.stringMatching(/^B at Z3 was chosen of 2 alternatives, but measured again no difference from today’s order is shown \(/),
  ])
  expect(said({ gain: pairedDifference([100, 102, 100], [106, 108, 107]) })).toEqual([
    notShown,
    expect.stringMatching(/^B at Z3 was chosen of 2 alternatives, but measured again that makes 6\.3 fewer units a shift than today’s \(/),
  ])
  expect(said({ gain: pairedDifference([3, 4], [3, 4]) })).toEqual([
    notShown,
    'B at Z3 was chosen of 2 alternatives, but measured again it makes exactly what today’s order makes.',
  ])
  expect(said({ gain: null })).toEqual([
    'Not known yet whether a new order helps: the study was stopped before the one chosen was measured beside today’s order.',
    'B at Z3 was chosen of 2 alternatives.',
  ])
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
  expect(sure({ table: null })).toContain('After 20 simulated shifts of each order no other could be better.')
  const even = result.table!.rows.map((one) => ({ ...one, low: 0, high: 0, maybeBest: true }))
  expect(sure({ table: { ...result.table!, rows: even } })).toContain('no other could be better; 2 other orders make just as much.')
  expect(sure({ exhaustive: false, searched: 70 })).toContain('short runs looked at 70')
  expect(sure({})).toContain('so that having been chosen does not flatter it')
  expect(sure({ gain: null })).not.toContain('flatter')
  expect(orderSure({ ...result, winner: null }, words)).toEqual([])
})
