import { expect, test } from 'vitest'
import { linesProgress } from './linesProgress.ts'

test('what is decided, and the time left once that is more than a guess', () => {
  expect(linesProgress('what drives the output', { done: 30, total: 120 }, 4)).toBe('what drives the output: 30 of 120 runs, 12 s left')
  expect(linesProgress('what drives the output', { done: 1, total: 120 }, 4)).toBe('what drives the output: 1 of 120 runs')
  expect(linesProgress('what drives the output', { done: 120, total: 120 }, 4)).toBe('what drives the output: 120 of 120 runs')
  const precise = { done: 30, total: 120, precision: 0.0123, what: 'which order is best, 3 left of 9' }
  expect(linesProgress('the order', precise, 4)).toBe('which order is best, 3 left of 9: 30 of 120 runs, means ± 1.2 %, 12 s left')
})
