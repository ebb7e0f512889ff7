import { expect, test } from 'vitest'
import { type CostPoint, costGrowth } from './costGrowth.ts'
import { costGrowthExample } from './examples/costGrowth.ts'

const point = (series: string, size: number, nanoseconds: number): CostPoint => ({
  series,
  size,
  nanoseconds,
  least: nanoseconds - 10,
  greatest: nanoseconds + 20,
})

test('says by how much an event comes to cost more, for each way to compute it', () => {
  const figure = costGrowth([point('a', 20, 100), point('a', 2000, 130), point('b', 20, 50), point('b', 2000, 40)], { of: 'zones' })
  expect(figure.finding).toBe(
    'A: from 20 to 2\u202f000 zones an event comes to cost 1.30 times as much. B: from 20 to 2\u202f000 zones an event comes to cost 0.80 times as much.',
  )
  expect(figure.table.rows.map(({ cells }) => cells)).toEqual([
    ['20', '100 (90 … 120)', '50 (40 … 70)'],
    ['2\u202f000', '130 (120 … 150)', '40 (30 … 60)'],
  ])
})

test('names each line once, at its end', () => {
  const { rows } = costGrowthExample()
  expect(rows.filter(({ label }) => label !== '').map(({ label, size }) => [label, size])).toEqual([
    ['event engine', 20_000],
    ['recursion', 20_000],
  ])
})

test('a single size is no growth, and four lines are too many to tell apart', () => {
  expect(() => costGrowth([], { of: 'zones' })).toThrow('1 to 3 series')
  expect(() => costGrowth([point('a', 20, 100)], { of: 'zones' })).toThrow('2 sizes')
  const four = ['a', 'b', 'c', 'd'].flatMap((name) => [point(name, 1, 1), point(name, 2, 1)])
  expect(() => costGrowth(four, { of: 'zones' })).toThrow(RangeError)
})
