import type { SteadyResult } from '@loopwright/study'
import { expect, test } from 'vitest'
import { steadySentences, steadySure } from './steadyWords.ts'

const interval = (mean: number) =>
  ({ n: 10, mean, sd: 1, level: 0.95, halfWidth: 0.5, low: mean - 0.5, high: mean + 0.5, status: 'ok' }) as const
const found: SteadyResult = {
  kind: 'steady state',
  engineVersion: '0',
  seed: '1',
  replications: 10,
  status: 'ok',
  intervalSeconds: 360,
  intervals: 200,
  runSeconds: 72000,
  cutSeconds: 1800,
  enoughSeconds: 19800,
  outputPerHour: interval(42),
  productsInLine: interval(9),
  output: null,
  products: null,
  why: null,
}
const scenario = (warmupSeconds: number, endSeconds: number, calendar = false) =>
  ({ line: { window: { warmupSeconds, endSeconds } }, calendar: calendar ? {} : null }) as never
const judged = (...of: Parameters<typeof scenario>) => steadySure(found, scenario(...of))[1]

test('the warm-up, the rate after it, and the length that would do', () => {
  expect(steadySentences(found).join(' ')).toBe(
    'The start shows for 30 min; from then on the line makes 42.0 ± 0.5 units an hour, with 9.0 ± 0.5 products on the loop. A run of 5.5 h with the first 30 min cut away would do for production that goes on and on.',
  )
})

test('without a cut no figure is given', () => {
  const none = { ...found, status: 'not converged', cutSeconds: null, why: 'Warm-up not found: run at least twice as long.' } as const
  expect(steadySentences(none)).toEqual(['No steady state is given. Warm-up not found: run at least twice as long.'])
  expect(steadySure(none, scenario(0, 60)).length).toBe(1)
})

test('what it means for the window of the scenario', () => {
  expect(judged(0, 3600)).toContain('nothing is to be cut away')
  expect(judged(30000, 60000, true)).toContain('from an ordinary state')
  expect(judged(600, 3600, true)).toContain('judge a later shift')
  expect(judged(600, 60000)).toContain('too little: take 30 min')
  expect(judged(1800, 7200)).toContain('too short: 5.5 h would do')
  expect(judged(1800, 72000)).toContain('long enough')
})
