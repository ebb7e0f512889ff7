import { expect, test } from 'vitest'
import { type CostPoint, costGrowth } from './costGrowth.ts'
import { costGrowthExample } from '../examples/costGrowth.ts'

const point = (series: string, size: number, cost: number): CostPoint => ({
  series,
  size,
  cost,
  least: cost - 10,
  greatest: cost + 20,
})

test('says by how much an event comes to cost more, for each way to compute it', () => {
  const figure = costGrowth([point('a', 20, 100), point('a', 2000, 130), point('b', 20, 50), point('b', 2000, 40)], {
    of: 'zones',
    unit: 'nanoseconds',
  })
  expect(figure.finding).toBe(
    'A: from 20 to 2\u202f000 zones an event comes to cost 1.30 times as much. B: from 20 to 2\u202f000 zones an event comes to cost 0.80 times as much.',
  )
  expect(figure.table.rows.map(({ cells }) => cells)).toEqual([
    ['20', '100 (90.0 … 120)', '50.0 (40.0 … 70.0)'],
    ['2\u202f000', '130 (120 … 150)', '40.0 (30.0 … 60.0)'],
  ])
})

test('tells the lines apart by their dashes, named in a key', () => {
  expect(costGrowthExample().drawing.key).toMatchObject([
    { text: 'event engine', dash: [1, 0] },
    { text: 'recursion', dash: [6, 3] },
  ])
})

test('a single size is no growth, and four lines are too many to tell apart', () => {
  expect(() => costGrowth([], { of: 'zones', unit: 'nanoseconds' })).toThrow('1 to 3 series')
  expect(() => costGrowth([point('a', 20, 100)], { of: 'zones', unit: 'nanoseconds' })).toThrow('2 sizes')
  const four = ['a', 'b', 'c', 'd'].flatMap((name) => [point(name, 1, 1), point(name, 2, 1)])
  expect(() => costGrowth(four, { of: 'zones', unit: 'nanoseconds' })).toThrow(RangeError)
})
