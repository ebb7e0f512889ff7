import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { quantilePlot } from './quantilePlot.ts'

test('a dot for each time, on the line where the curve is right', () => {
  const figure = quantilePlot({ name: 'wire', values: [45, 35, 40], mean: 40, quantile: (u) => 32.5 + 15 * u, curve: 'even' })
  // (i − ½)/n of three: 1/6, 1/2, 5/6
  expect(figure.table.rows.map(({ values }) => values.map(Number))).toEqual([
    [1, 35, 35],
    [2, 40, 40],
    [3, 45, 45],
  ])
  expect(marksOf(figure, 'dot')).toHaveLength(3)
  expect(figure.finding).toContain('no time is more than')
})

test('the farthest time is told, and where it stands', () => {
  const values = [...Array.from({ length: 20 }, (_, index) => 40 + index * 0.1), 80]
  expect(quantilePlot({ name: 'a', values, mean: 43, quantile: (u) => 40 + 2 * u, curve: 'even' }).finding).toBe(
    'a: farthest from the curve is a time of 80.0 s, among the longest; the curve expects 42.0 s there.',
  )
  expect(() => quantilePlot({ name: 'a', values: [], mean: 43, quantile: () => 1, curve: '' })).toThrow(RangeError)
})
