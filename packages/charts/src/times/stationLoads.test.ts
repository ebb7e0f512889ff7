import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { stationLoads } from './stationLoads.ts'

const LOADS = [
  { name: 'Station 1', tasks: [{ name: 'frame', seconds: 6 }] },
  {
    name: 'Station 2',
    tasks: [
      { name: 'motor', seconds: 3.5 },
      { name: 'cover', seconds: 4 },
    ],
  },
]
const figure = stationLoads(LOADS, 7.5)

test('the parts of a bar add up to its work, and the cycle is a line across all', () => {
  expect(marksOf(figure, 'area').map(({ x }) => x)).toEqual([
    [0, 6],
    [0, 3.5],
    [3.5, 7.5],
  ])
  expect(marksOf(figure, 'rule').at(-1)).toMatchObject({ x: [7.5, 7.5], y: ['from', 'to'], ink: 'plan' })
})

test('the finding names the most and the least, as shares of the cycle', () => {
  expect(figure.finding).toBe('Station 2 has most work, 7.5 s of the cycle of 7.5 s (100\u202f%); Station 1 has least, 6 s (80\u202f%).')
  expect(figure.table.rows.map(({ cells }) => cells[1])).toEqual(['6 s', '7.5 s'])
  expect(() => stationLoads([], 7.5)).toThrow(RangeError)
})
