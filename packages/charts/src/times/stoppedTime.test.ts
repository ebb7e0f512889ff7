import { marksOf, textsOf } from '../../../../tests/helpers/marksOf.ts'
import { describe, expect, test } from 'vitest'
import { stoppedTime } from './stoppedTime.ts'

const WINDOW = { per: 'shift', windowSeconds: 30_000 }
const stops = [
  { cause: 'break', seconds: 3_000, count: 3 },
  { cause: 'tester', seconds: 1_290, count: 4.2 },
  { cause: 'corner T1', seconds: 0, count: 0 },
  { cause: 'pump', seconds: 1_400, count: 1 },
]

describe('bars', () => {
  const figure = stoppedTime({ carriers: 10, stoppedBy: stops }, WINDOW)
  const { table, finding } = figure
  test('unplanned causes, the longest first', () => {
    expect(textsOf(figure)).toEqual(['pump', '23 min, 1.0 stop', 'tester', '22 min, 4.2 stops', 'corner T1', '0.0 min, 0.0 stops'])
    expect(marksOf(figure, 'area').map(({ ink }) => ink)).toEqual(['bar', 'bar', 'bar'])
  })
  test('the table tells the mean length, where there was a stop', () => {
    expect(table.rows.map(({ cells }) => cells)).toEqual([
      ['pump', '23', '1.0', '23.3'],
      ['tester', '22', '4.2', '5.1'],
      ['corner T1', '0.0', '0.0', '–'],
      ['break', '50', '3.0', '16.7'],
    ])
  })
  test('the finding names the largest unplanned cause', () => {
    expect(finding).toBe('The largest unplanned cause is pump: 23 min of a shift in 1.0 stop. Breaks take 50 min.')
  })
})

test('beyond twelve causes the rest is one bar; the table keeps all', () => {
  const many = Array.from({ length: 20 }, (_, index) => ({ cause: `cause ${index}`, seconds: 100 + index, count: 1 }))
  const figure = stoppedTime({ carriers: 1, stoppedBy: [...many, stops[0]!] }, WINDOW)
  const { table } = figure
  const bars = marksOf(figure, 'area')
  expect(bars.length).toBe(12)
  expect(textsOf(figure).at(-2)).toBe('9 other causes, added up')
  expect(Number(bars[11]!.x[1])).toBeCloseTo((9 * 104) / 60, 9)
  expect(table.rows.length).toBe(21)
})

test('nothing but breaks, and nothing at all', () => {
  expect(stoppedTime({ carriers: 1, stoppedBy: [stops[0]!] }, WINDOW).finding).toBe('Nothing stopped but for breaks: 50 min of a shift.')
  expect(marksOf(stoppedTime({ carriers: 1, stoppedBy: [stops[0]!] }, WINDOW), 'area')).toMatchObject([{ ink: 'barPale' }])
  expect(stoppedTime({ carriers: 1, stoppedBy: [] }, WINDOW).finding).toBe('Nothing stopped.')
})

test('a cause at several places is one bar and one row, with its places below', () => {
  const places = [
    { place: 'S1', seconds: 120, count: 2 },
    { place: 'S2', seconds: 60, count: 1 },
  ]
  const figure = stoppedTime({ carriers: 1, stoppedBy: [{ cause: 'Short stop', seconds: 180, count: 3, places }] }, WINDOW)
  const { table } = figure
  expect(marksOf(figure, 'area')).toHaveLength(1)
  expect(textsOf(figure)[0]).toBe('Short stop')
  expect(table.rows.map(({ cells }) => cells)).toEqual([
    ['Short stop', '3.0', '3.0', '1.0'],
    ['– at S1', '2.0', '2.0', '1.0'],
    ['– at S2', '1.0', '1.0', '1.0'],
  ])
  expect(table.rows.map(({ values }) => values.slice(0, 2))).toEqual([
    ['Short stop', null],
    ['Short stop', 'S1'],
    ['Short stop', 'S2'],
  ])
})
