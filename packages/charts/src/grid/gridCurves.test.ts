import { expect, test } from 'vitest'
import { gridExample } from '../examples/grid.ts'
import { gridCurves } from './gridCurves.ts'

const grid = gridExample(false)

test('a curve for each level of the factor with fewer levels, over the numbers of the other', () => {
  const { rows, finding } = gridCurves(grid, { per: 'shift' })
  expect(new Set(rows.map(({ curve }) => curve))).toEqual(new Set(['0', '1', '2']))
  expect(rows.filter(({ curve }) => curve === '1').map(({ at }) => at)).toEqual([6, 7, 8, 9, 10, 11, 12])
  expect(finding).toBe(
    'Most units with drive.speed 10 m/min: 335 ± 3 at 10 carriers; drive.speed 12 m/min: 337 ± 3 at 10 carriers; drive.speed 15 m/min: 337 ± 3 at 10 carriers.',
  )
  expect(rows.filter(({ best }) => best)).toHaveLength(1)
})

test('factors beyond the second stay as at the best setting, and it says so', () => {
  const { rows, readLine } = gridCurves(gridExample(true))
  expect(rows).toHaveLength(21)
  expect(readLine).toContain('Drawn with stations.S6.work 64 s, as at the best setting.')
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
  expect(one.rows.map(({ at }) => at)).toEqual([0, 1, 2, 3, 4, 5, 6])
  expect(one.finding).toBe('Most units: 335 ± 3 at drive.release e.')
})

test('nothing was run: nothing is drawn', () => {
  const points = grid.points.map((point) => ({ ...point, units: [], mean: null }))
  expect(() => gridCurves({ ...grid, points })).toThrow('without a replication')
})
