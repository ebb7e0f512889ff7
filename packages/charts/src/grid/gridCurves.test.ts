import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { expect, test } from 'vitest'
import { gridExample } from '../examples/grid.ts'
import { gridCurves } from './gridCurves.ts'

const grid = gridExample(false)

test('a curve for each level of the factor with fewer levels, over the numbers of the other', () => {
  const figure = gridCurves(grid, { per: 'shift' })
  const { finding } = figure
  const curves = marksOf(figure, 'path')
  expect(curves.map(({ points }) => points.map(([at]) => at))).toEqual(Array.from({ length: 3 }, () => [6, 7, 8, 9, 10, 11, 12]))
  expect(new Set(curves.map(({ dash }) => String(dash))).size).toBe(3)
  expect(finding).toBe(
    'Most units with drive.speed 10 m/min: 335 ± 3 at 10 carriers; drive.speed 12 m/min: 337 ± 3 at 10 carriers; drive.speed 15 m/min: 337 ± 3 at 10 carriers.',
  )
  expect(marksOf(figure, 'dot').filter(({ ink }) => ink === 'chosenDot')).toHaveLength(1)
})

test('factors beyond the second stay as at the best setting, and it says so', () => {
  const figure = gridCurves(gridExample(true))
  expect(marksOf(figure, 'path').flatMap(({ points }) => points)).toHaveLength(21)
  expect(figure.readLine).toContain('Drawn with stations.S6.work 64 s, as at the best setting.')
})

test('one factor is one curve; levels that are no numbers stand side by side', () => {
  const points = grid.points.filter(({ levels }) => levels[1] === 0).map((point) => ({ ...point, levels: [point.levels[0]!] }))
  const one = gridCurves({
    ...grid,
    points,
    factors: [{ name: 'drive.release', levels: ['a', 'b', 'c', 'd', 'e', 'f', 'g'] }],
    best: 4,
    effects: null,
  })
  expect(marksOf(one, 'path')[0]!.points.map(([at]) => at)).toEqual([0, 1, 2, 3, 4, 5, 6])
  expect(one.finding).toBe('Most units: 335 ± 3 at drive.release e.')
})

test('settings that all make the same have an axis around them', () => {
  const points = grid.points.map((point) => ({ ...point, plan: null, mean: { ...point.mean!, mean: 24, low: 24, high: 24 } }))
  const { up } = gridCurves({ ...grid, points }).drawing
  expect([up.from, up.to > 24]).toEqual([22, true])
})

test('nothing was run: nothing is drawn', () => {
  const points = grid.points.map((point) => ({ ...point, units: [], mean: null }))
  expect(() => gridCurves({ ...grid, points })).toThrow('without a replication')
})
