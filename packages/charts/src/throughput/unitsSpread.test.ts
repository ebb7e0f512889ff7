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
    const { rows } = figure(PLAN)
    expect(rows.reduce((sum, { windows }) => sum + Number(windows), 0)).toBe(20)
    for (const { from, to } of rows) expect(Number(from) >= PLAN || Number(to) <= PLAN).toBe(true)
    const met = rows.filter((row) => row.met).reduce((sum, { windows }) => sum + Number(windows), 0)
    expect(met).toBe(units.filter((each) => each >= PLAN).length)
  })
  test('a plan that is no whole number begins the column of the next', () => {
    const { rows } = figure(319.2)
    expect(rows.find((row) => row.met)!.from).toBe(320)
  })
  test('equal shifts make one column', () => {
    expect(figure(null, [7, 7, 7]).rows).toMatchObject([{ from: 7, to: 8, windows: 3, met: true }])
  })
  test('the marked row of the table begins at the plan', () => {
    const { table } = figure(PLAN)
    expect(table.rows.filter(({ marked }) => marked).map(({ cells }) => cells[0])).toEqual(['320–324'])
    expect(table.rows.find(({ marked }) => marked)!.cells[2]).toBe('70')
  })
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
