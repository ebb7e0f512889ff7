import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { timesSpread } from './timesSpread.ts'

const values = [41, 38, 45, 52, 39, 43, 47, 61, 40, 44]

test('every time stands in one column, and the curve expects as many', () => {
  const figure = timesSpread({ name: 'wire', values, mean: 45, cdf: (x) => Math.min(1, Math.max(0, (x - 30) / 40)), curve: 'even' })
  const rows = figure.table.rows.map((row) => row.values)
  expect(rows.reduce((sum, row) => sum + Number(row[2]), 0)).toBe(10)
  // ten times spread evenly over 40 s: a quarter of a time in each second
  expect(rows[0]![3]).toBeCloseTo(((Number(rows[0]![1]) - Number(rows[0]![0])) * 10) / 40, 12)
  expect(marksOf(figure, 'path')).toHaveLength(1)
  expect(figure.finding).toBe('wire: 38.0 to 61.0 s, 45.0 s on average; the curve even is simulated.')
})

test('one value, equal values, and none', () => {
  expect(timesSpread({ name: 'a', values: [45], mean: 45, cdf: null, curve: '' }).table.rows).toHaveLength(1)
  expect(timesSpread({ name: 'a', values: [45, 45], mean: 45, cdf: null, curve: '' }).finding).toContain(
    'the measured values are simulated',
  )
  expect(() => timesSpread({ name: 'a', values: [], mean: 45, cdf: null, curve: '' })).toThrow(RangeError)
})

test('a long tail is told', () => {
  expect(timesSpread({ name: 'a', values: [10, 10, 10, 30], mean: 15, cdf: null, curve: '' }).finding).toContain(
    '1 of 4 took more than one and a half times the mean',
  )
})
