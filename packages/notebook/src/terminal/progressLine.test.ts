import { expect, test } from 'vitest'
import { sweepProgressLine } from './progressLine.ts'

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
