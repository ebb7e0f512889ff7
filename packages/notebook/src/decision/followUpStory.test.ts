import { followUp, stationDeviations } from '@loopwright/decide/acceptance'
import { expect, test } from 'vitest'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { type FollowUpRuns, followUpStory } from './followUpStory.ts'

const forecast = Array.from({ length: 100 }, (_, shift) => 332 + 12 * Math.cos((shift * Math.PI) / 50))
const weeks = (per: number) => [1, 2, 3].map((week) => ({ name: `W${week}`, units: 10 * per, shifts: 10 }))
const of = (per: number, over: Partial<FollowUpRuns> = {}): FollowUpRuns => ({
  kind: 'follow-up',
  name: 'loop',
  result: followUp(weeks(per), forecast, '1'),
  stations: null,
  stops: null,
  waits: [],
  factor: null,
  recalibrated: null,
  plan: 320,
  written: null,
  ...over,
})

test('weeks as forecast: the promise still stands', () => {
  const { answer, cells } = followUpStory(of(333))
  for (const { value } of answer.figures!) expect(answer.sentences.join(' ')).toContain(value)
  expect(answer.sentences).toEqual([
    expect.stringMatching(/^The promise still stands: 333 units a shift in 3 weeks, < 1.% above the forecast of 332\.$/),
  ])
  expect(toldTwice(cells)).toEqual(TOLD_TWICE)
})

test('weeks below: it no longer stands, what to measure again, what the recalibrated line makes and where it is', () => {
  const stations = stationDeviations([{ station: 'S6', seconds: 66.2, n: 40, sd: 2.6 }], new Map([['S6', 61.8]]))
  const meetsPlan = { successes: 50, n: 100, share: 0.5, low: 0.4, high: 0.6 } as never
  const { answer, cells } = followUpStory(of(316, { stations, recalibrated: { units: [316, 318], meetsPlan }, written: 'now.yaml' }))
  const said = answer.sentences.join(' ').replace(/\s/g, ' ')
  expect(said).toContain('The promise no longer stands: 316 units a shift in 3 weeks, 5 % below the forecast of 332')
  expect(said).toContain('Measure again first: S6 (work 7 % longer than in the model')
  expect(said).toContain(
    'The recalibrated line makes 317 units a shift (counted: 316), and meets the plan of 320 in 50 % of shifts (40 % to 60 %).',
  )
  expect(said).toContain('The recalibrated scenario is written to now.yaml.')
  expect(toldTwice(cells)).toEqual(TOLD_TWICE)
})

test('a factor on all work is told with its doubt, and where none is found, that', () => {
  expect(followUpStory(of(316, { factor: { factor: 1.06, units: 316, found: true } })).answer.sentences[1]).toMatch(
    /^With all work 6.% longer the model makes what was counted: measure the constraint/,
  )
  expect(followUpStory(of(100, { factor: { factor: 1.8, units: 200, found: false } })).answer.sentences[1]).toContain(
    'No factor on the work alone',
  )
})
