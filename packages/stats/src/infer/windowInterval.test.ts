import { expect, test } from 'vitest'
import { predictionInterval } from './predictionInterval.ts'
import { windowInterval } from './windowInterval.ts'

const upTo = (n: number): number[] => Array.from({ length: n }, (_, k) => k + 1)

test('39 windows are the first that give order statistics at 95 %: all between the least and the most, 38 of 40', () => {
  expect(windowInterval(upTo(39))).toMatchObject({ low: 1, high: 39, method: 'order statistics', coverage: 38 / 40 })
  expect(windowInterval(upTo(38))).toMatchObject({ method: 'Student t', coverage: null })
})

test('of 100 two are left out on either side: 97 of 101', () => {
  expect(windowInterval(upTo(100).toReversed())).toMatchObject({ low: 2, high: 99, coverage: 97 / 101 })
  expect(windowInterval(upTo(9), 0.8)).toMatchObject({ low: 1, high: 9, coverage: 0.8 })
})

test('fewer: the normal prediction, never narrower than what was seen', () => {
  const { low, high } = predictionInterval([10, 11, 12])
  expect(windowInterval([10, 11, 12])).toMatchObject({ low, high })
  const values = [...new Array<number>(20).fill(100), 99, 101, 20]
  expect(windowInterval(values).low).toBe(20)
})

test('no spread: the one value', () => {
  expect(windowInterval([5, 5])).toMatchObject({ low: 5, high: 5, method: 'none needed' })
})
