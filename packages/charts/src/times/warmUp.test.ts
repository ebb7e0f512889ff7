import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { warmUp, type WarmUpNumbers } from './warmUp.ts'

const numbers = (cutSeconds: number | null, intervals = 60): WarmUpNumbers => ({
  intervalSeconds: 300,
  cutSeconds,
  replications: 5,
  outputPerHour: null,
  productsInLine: null,
  series: {
    unitsPerHour: Array.from({ length: intervals }, (_, at) => Math.min(40, at * 10)),
    products: Array.from({ length: intervals }, (_, at) => Math.min(9, at)),
  },
})

test('the cut is drawn where it is, and what comes before it is shaded', () => {
  const figure = warmUp(numbers(1200))
  expect(marksOf(figure, 'area')[0]).toMatchObject({ x: [0, 20] })
  expect(marksOf(figure, 'rule')[0]).toMatchObject({ x: [20, 20], ink: 'chosenLine' })
  expect(figure.table.rows.findIndex(({ marked }) => marked)).toBe(4)
})

test('each interval is a step of its own rate', () => {
  const [path] = marksOf(warmUp(numbers(1200)), 'path')
  expect(path!.points.slice(0, 4)).toEqual([
    [0, 0],
    [5, 0],
    [5, 10],
    [10, 10],
  ])
})

test('without a cut, and with none needed, that is said and nothing is shaded', () => {
  expect(warmUp(numbers(null)).finding).toContain('No cut is found')
  expect(warmUp(numbers(0)).finding).toContain('leaves no trace')
  for (const cut of [null, 0]) expect(marksOf(warmUp(numbers(cut)), 'area')).toEqual([])
})

test('of a long run four cuts are drawn, of a short one all', () => {
  expect(warmUp(numbers(3000, 400)).drawing.across.to).toBe(200)
  expect(warmUp(numbers(1200, 10)).drawing.across.to).toBe(50)
})
