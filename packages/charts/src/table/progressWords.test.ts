import { expect, test } from 'vitest'
import { progressWords } from './progressWords.ts'

test('what is decided, how far, how precise, how long still', () => {
  expect(progressWords('what', { done: 10, total: 20, leading: 12, precision: 0.01 }, 2, 80)).toBe(
    'what: 10 of 20 runs, most with 12, means ± 1.0 %, 2 s left',
  )
  expect(progressWords('what', { done: 1500, total: 2600 }, 0, 80)).toBe('what: 1\u202f500 of 2\u202f600 runs')
})

test('the time left is told when enough is done, and while something is left', () => {
  const words = (done: number, seconds: number, recalled = 0) => progressWords('w', { done, total: 100, recalled }, seconds, 80)
  expect(words(9, 60)).toBe('w: 9 of 100 runs')
  expect(words(10, 60)).toBe('w: 10 of 100 runs, 9 min left')
  expect(words(50, 1.9)).toBe('w: 50 of 100 runs')
  expect(words(50, 2)).toBe('w: 50 of 100 runs, 2 s left')
  expect(words(100, 60)).toBe('w: 100 of 100 runs')
  // 60 came from the store: of the 40 to run, 3 are too few, 10 took 5 s
  expect(words(63, 5, 60)).toBe('w: 63 of 100 runs')
  expect(words(70, 5, 60)).toBe('w: 70 of 100 runs, 15 s left')
})

test('a total that may grow is not told, nor a time', () => {
  expect(progressWords('w', { done: 50, total: 100, settled: false, precision: 0.02 }, 60, 80)).toBe('w: 50 runs, means ± 2.0 %')
  expect(progressWords('w', { done: 1, total: 1, settled: false }, 60, 80)).toBe('w: 1 run')
})

test('never wider than the columns there are', () => {
  const runs = { done: 50, total: 100, leading: 12, precision: 0.01 }
  const words = (columns: number) => progressWords('which order is best', runs, 10, columns)
  for (let columns = 20; columns <= 90; columns += 1) expect([...words(columns)].length).toBeLessThanOrEqual(columns)
  expect(words(60)).toBe('which order is best: 50 of 100 runs, most with 12, 10 s left')
  expect(words(50)).toBe('which order is best: 50 of 100 runs, 10 s left')
  expect(words(30)).toBe('which order is best: 50 of 10…')
})

test('what is decided stands on one line, whatever the names in it', () =>
  expect(progressWords('where to\nput \u001b[2JS5', { done: 0, total: 2 }, 0, 80)).toBe('where to put \\u001b[2JS5: 0 of 2 runs'))
