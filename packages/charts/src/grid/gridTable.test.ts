import { marksOf, textsOf } from '../../../../tests/helpers/marksOf.ts'
import { expect, test } from 'vitest'
import { gridExample } from '../examples/grid.ts'
import { gridTable } from './gridTable.ts'

const grid = gridExample(false)

test('a cell for each setting; the shade rises with the mean, from the first step to the last', () => {
  const figure = gridTable(grid, { per: 'shift' })
  const { finding } = figure
  const shaded = marksOf(figure, 'area').filter(({ ink, words }) => ink.startsWith('ramp') && words!.length === 2)
  expect(shaded).toHaveLength(21)
  const means = grid.points.map(({ mean }) => mean!.mean)
  const steps = shaded.map(({ ink }) => Number(ink.slice(5)))
  expect([Math.min(...steps), Math.max(...steps)]).toEqual([0, 8])
  for (const [i, a] of means.entries()) for (const [j, b] of means.entries()) if (a > b) expect(steps[i]!).toBeGreaterThanOrEqual(steps[j]!)
  expect(marksOf(figure, 'area').flatMap(({ ink }) => (ink.startsWith('ramp') ? [] : [ink]))).toEqual(['chosenCell', 'baseCell'])
  expect(finding).toBe(
    'Most units: 337 ± 3 a shift with 10 carriers with drive.speed 15 m/min; 2 others cannot be told from it. 15 of 21 settings meet the plan in nine of ten shifts.',
  )
})

test('a third factor makes a block for each of its levels; where that is too long only that of the best', () => {
  const blocks = gridTable(gridExample(true))
  expect(textsOf(blocks)).toEqual(['stations.S6.work 64 s', 'stations.S6.work 70 s'])
  const many = Array.from({ length: 12 }, (_, level) => `${level}`)
  const factors = [...grid.factors, { name: 'x', levels: many }]
  const points = many.flatMap((_, level) => grid.points.map((point) => ({ ...point, levels: [...point.levels, level] })))
  const long = gridTable({ ...grid, factors, points, best: 50 })
  expect(textsOf(long)).toEqual(['x 2'])
  expect(long.readLine).toContain('Only the block of the best setting is drawn; the table has all 12.')
  expect(long.table.rows).toHaveLength(252)
})

test('no plan, no chance of it; one factor is no table', () => {
  const points = grid.points.map((point) => ({ ...point, plan: null, meetsPlan: null }))
  const { readLine, finding, table } = gridTable({ ...grid, points })
  expect(readLine).not.toContain('plan')
  expect(finding).not.toContain('plan')
  expect(table.columns.map(({ head }) => head)).not.toContain('Plan\nmet in')
  expect(() => gridTable({ ...grid, factors: grid.factors.slice(0, 1) })).toThrow('needs two factors')
})

test('nothing stood without standing still: it says so; settings that stood still are no answer to the plan', () => {
  const stuck = grid.points.map((point) => ({ ...point, gridlocks: 3 }))
  expect(gridTable({ ...grid, points: stuck, best: null }).finding).toBe('Every setting stood still in some window, or none has been run.')
  const { table, finding } = gridTable({ ...grid, points: stuck })
  expect(finding).toContain('No setting meets the plan')
  expect(table.columns.at(-1)!.head).toBe('Stood still\nin')
})
