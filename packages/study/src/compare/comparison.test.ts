import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { rowLayout } from '../runs/runRow.ts'
import { comparisonOf } from './comparison.ts'

const line = stationLoop()
const layout = rowLayout(line)
const row = (units: number): Float64Array => {
  const made = new Float64Array(layout.length)
  made[layout.units] = units
  return made
}
const lines = ['a', 'b'].map((name) => ({ name, line, plan: 11 }))
const request = { seed: '1', replications: 4, level: 0.95 }

test('means, plan and pairs come from the rows alone', () => {
  const result = comparisonOf(
    lines,
    [
      [10, 12, 11, 13],
      [11, 13, 13, 13],
    ].map((units) => ({ layout, rows: units.map(row) })),
    request,
  )
  expect(result.lines.map(({ mean }) => mean!.mean)).toEqual([11.5, 12.5])
  expect(result.lines.map(({ meetsPlan }) => meetsPlan!.share)).toEqual([0.75, 1])
  expect(result.pairs).toMatchObject([{ first: 1, second: 0, difference: { mean: 1 } }])
  expect(result.partial).toBe(false)
})

test('below two replications there is no pair, and the result is partial', () => {
  const result = comparisonOf(
    lines,
    [[10], [11]].map((units) => ({ layout, rows: units.map(row) })),
    request,
  )
  expect(result).toMatchObject({ partial: true, pairs: [] })
})
