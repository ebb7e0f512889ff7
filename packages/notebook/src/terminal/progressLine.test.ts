import { expect, test } from 'vitest'
import { linesProgress, sweepProgressLine } from './progressLine.ts'

const RUNNING = { settled: true, recalled: 0 }

test('says what is tried, how much is done, how well means are known, how long it takes', () => {
  expect(sweepProgressLine([5, 6, 7], { ...RUNNING, done: 150, total: 600, precision: 0.0123, leading: 6 }, 2)).toBe(
    '5 to 7 carriers: 150 of 600 runs, most with 6, means ± 1.2 %, 6 s left',
  )
})

test('says no time at the start and at the end, and no precision before there is one', () => {
  expect(sweepProgressLine([5], { ...RUNNING, done: 0, total: 30, precision: null, leading: null }, 0)).toBe('5 carriers: 0 of 30 runs')
  expect(sweepProgressLine([5], { ...RUNNING, done: 30, total: 30, precision: 0.02, leading: 5 }, 9)).toBe(
    '5 carriers: 30 of 30 runs, means ± 2.0 %',
  )
})

test('of several lines: what is decided, and the time left once that is more than a guess', () => {
  expect(linesProgress('what drives the output', { done: 30, total: 120 }, 4)).toBe('what drives the output: 30 of 120 runs, 12 s left')
  expect(linesProgress('what drives the output', { done: 1, total: 120 }, 4)).toBe('what drives the output: 1 of 120 runs')
  expect(linesProgress('what drives the output', { done: 120, total: 120 }, 4)).toBe('what drives the output: 120 of 120 runs')
  const precise = { done: 30, total: 120, precision: 0.0123, what: 'which order is best, 3 left of 9' }
  expect(linesProgress('the order', precise, 4)).toBe('which order is best, 3 left of 9: 30 of 120 runs, means ± 1.2 %, 12 s left')
})
