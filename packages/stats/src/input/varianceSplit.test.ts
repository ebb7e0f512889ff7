import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { varianceSplit } from './varianceSplit.ts'

test('it finds both parts again', () => {
  // 2,000 draws of 3 with parts 4 and 9: standard error of the input part about 0.32, of the other 0.2; five of each
  const next = stream('7', 0, 'split')
  const rows = Array.from({ length: 2000 }, () => {
    const level = 100 + 2 * normalQuantile(next())
    return Array.from({ length: 3 }, () => level + 3 * normalQuantile(next()))
  })
  const got = varianceSplit(rows)
  expect(Math.abs(got.inputVariance - 4)).toBeLessThan(1.6)
  expect(Math.abs(got.meanSquareWithin - 9)).toBeLessThan(1)
})

test('nothing varies: no share of nothing', () => {
  expect(
    varianceSplit([
      [5, 5],
      [5, 5],
    ]),
  ).toMatchObject({ inputVariance: 0, inputShare: null, grandMean: 5 })
})

test('refused', () => {
  expect(() => varianceSplit([[1, 2]])).toThrow('from 1 outer draw')
  expect(() => varianceSplit([[1], [2]])).toThrow('from 1 replication')
  expect(() => varianceSplit([[1, 2], [2]])).toThrow('Outer draw 1 has 2 values and outer draw 2 has 1')
})
