import { expect, test } from 'vitest'
import { FOUND, NONE } from '../../../../tests/helpers/steadyResult.ts'
import { steadyFigures, steadySentences, steadySure } from './steadyWords.ts'

const scenario = (warmupSeconds: number, endSeconds: number, calendar = false) =>
  ({ line: { window: { warmupSeconds, endSeconds } }, calendar: calendar ? {} : null }) as never
const judged = (...of: Parameters<typeof scenario>) => steadySure(FOUND, scenario(...of))[1]

test('what to discard and what is then enough, rounded up; then the rate', () => {
  // 5658 s are 94.3 min, ten times that 15.7 h
  expect(steadySentences(FOUND, 'loop')).toEqual([
    'Discard 95 min of warm-up; 16 h of steady production is then enough.',
    'From then on the loop makes 42.0 ± 0.5 units an hour, with 9.0 ± 0.5 products on it.',
  ])
  expect(steadySentences(FOUND, 'open line')[1]).toMatch(/^From then on the open line makes/)
})

test('lengths are never rounded to less', () => {
  const figures = (cutSeconds: number, enoughSeconds: number) => steadyFigures({ ...FOUND, cutSeconds, enoughSeconds })
  expect(figures(1800, 19_800)).toMatchObject({ cut: '30 min', enough: '5 h' })
  expect(figures(1801, 19_811)).toMatchObject({ cut: '31 min', enough: '5 h 15 min' })
  expect(figures(90.2, 992.2)).toMatchObject({ cut: '91 s', enough: '16 min' })
})

test('a start that leaves no trace', () => {
  expect(steadySentences({ ...FOUND, cutSeconds: 0, enoughSeconds: 19_800 }, 'loop')[0]).toBe(
    'Nothing needs to be discarded: the start leaves no trace. 5 h 30 min of production is enough.',
  )
})

test('without a warm-up no figure is given', () => {
  expect(steadySentences(NONE, 'loop')).toEqual(['No steady rate is given. Warm-up not found: run at least twice as long.'])
  expect(steadyFigures(NONE)).toBeNull()
  expect(steadySure(NONE, scenario(0, 60)).length).toBe(1)
})

test('what it means for the window of the scenario', () => {
  expect(judged(0, 3600)).toContain('nothing is to be discarded')
  expect(judged(30_000, 60_000, true)).toContain('from an ordinary state')
  expect(judged(600, 3600, true)).toContain('while the start shows for 95 min: judge a later shift')
  expect(judged(600, 90_000)).toContain('too little: take 95 min')
  expect(judged(6000, 12_000)).toContain('counts 100 min, which is too short: take 16 h')
  expect(judged(6000, 90_000)).toContain('long enough')
})
