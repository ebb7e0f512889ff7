import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { binomialEstimate, quantileEstimate } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { unitsSpread } from './unitsSpread.ts'

const PLAN = 320
const units = [301, 305, 311, 316, 318, 319, 320, 320, 321, 325, 327, 329, 330, 331, 333, 338, 340, 344, 349, 352]

function figure(plan: number | null, of: readonly number[] = units) {
  const met = plan === null ? null : binomialEstimate(of.filter((each) => each >= plan).length, of.length)
  return unitsSpread(
    { carriers: 10, units: of, p10: quantileEstimate(of, 0.1), meetsPlan: met },
    { per: 'shift', windowSeconds: 30_000, plan },
  )
}

describe('columns', () => {
  test('every shift is in one column, and no column straddles the plan', () => {
    const columns = marksOf(figure(PLAN), 'area')
    const windows = (of: typeof columns) => of.reduce((sum, { y }) => sum + Number(y[1]), 0)
    expect(windows(columns)).toBe(20)
    for (const { x } of columns) expect(Number(x[0]) >= PLAN || Number(x[1]) <= PLAN).toBe(true)
    expect(windows(columns.filter(({ ink }) => ink === 'bar'))).toBe(units.filter((each) => each >= PLAN).length)
  })
  test('a plan that is no whole number begins the column of the next', () => {
    expect(marksOf(figure(319.2), 'area').find(({ ink }) => ink === 'bar')!.x[0]).toBe(320)
  })
  test('equal shifts make one column', () => {
    expect(marksOf(figure(null, [7, 7, 7]), 'area')).toMatchObject([{ x: [7, 8], y: [0, 3], ink: 'bar' }])
  })
  test('the marked row of the table begins at the plan', () => {
    const { table } = figure(PLAN)
    expect(table.rows.filter(({ marked }) => marked).map(({ cells }) => cells[0])).toEqual(['320–324'])
    expect(table.rows.find(({ marked }) => marked)!.cells[2]).toBe('70')
  })
})

test('another count is outlined as high as with as many shifts, on an axis that holds both', () => {
  const ghost = { carriers: 9, units: [280, 280, 300, 300, 300], p10: null, meetsPlan: null }
  const count = { carriers: 10, units, p10: null, meetsPlan: null }
  const both = unitsSpread(count, { per: 'shift', windowSeconds: 30_000, ghost, unitsSpan: [280, 352] })
  const [outline] = marksOf(both, 'path')
  // 3 of 5 is 12 of 20
  expect(Math.max(...outline!.points.map(([, windows]) => windows))).toBe(12)
  expect(both.drawing.across.from).toBeLessThan(280)
  expect(both.readLine).toContain('Outlined: 9 carriers')
})

describe('finding', () => {
  test('the chance of the plan and what nine of ten make', () => {
    expect(figure(PLAN).finding).toBe(
      'With 10 carriers the plan of 320 is met in 14 of 20 simulated shifts; nine of ten shifts make at least 310 units.',
    )
  })
  test('never certain: all of those simulated', () => {
    expect(figure(300).finding).toContain('met in all 20 simulated shifts')
    expect(figure(400).finding).toContain('met in none of 20 simulated shifts')
  })
  test('without a plan, and without data', () => {
    expect(figure(null).finding).toBe('With 10 carriers, nine of ten shifts make at least 310 units.')
    expect(unitsSpread({ carriers: 1, units: [], p10: null, meetsPlan: null }, { windowSeconds: 1 }).finding).toContain(
      'No window has been',
    )
  })
})
