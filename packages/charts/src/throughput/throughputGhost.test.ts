import { describe, expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { baseLineSweep } from '../examples/baseLine.ts'
import { throughput } from './throughput.ts'

const sweep = { ...baseLineSweep(), answer: null }
const alone = throughput(sweep, { per: 'shift' })
const { from, to } = alone.drawing.up
const ghost = {
  called: 'in the file',
  counts: [9, 10, 11].map((carriers) => ({ carriers, units: 300 + carriers })),
  span: [from, to] as const,
}
const told = throughput(sweep, { per: 'shift', ghost })

describe('a curve beside the one that was', () => {
  test('has a level stroke at each mean of it, on its axis', () => {
    const strokes = marksOf(told, 'rule').filter(({ ink }) => ink === 'ghost')
    expect(strokes.map(({ y }) => y)).toEqual([
      [309, 309],
      [310, 310],
      [311, 311],
    ])
    expect(told.drawing.up).toEqual(alone.drawing.up)
    expect(told.drawing.key!.at(-1)).toEqual({ text: 'in the file', sample: 'line', ink: 'ghost' })
  })

  test('an axis that is too short grows by whole steps, and by nothing else', () => {
    const low = throughput(sweep, { per: 'shift', ghost: { ...ghost, span: [from + 20, to - 100] } }).drawing.up
    expect(low.from).toBe(from)
    expect(low.to % 20).toBe(0)
    expect(low.to).toBeGreaterThanOrEqual(to)
  })

  test('says which count makes the most on each, and has both means in its table', () => {
    expect(told.finding).toMatch(
      /^With the change 1\d carriers make the most of those tried, 3\d\d ± \d units per shift; in the file 311, with 11\.$/,
    )
    const column = told.table.columns.findIndex(({ head }) => head === 'Mean\nin the file')
    expect(told.table.rows.map(({ cells }) => cells[column]).slice(3, 7)).toEqual(['–', '309', '310', '311'])
  })

  test('where every count stands still it says that', () => {
    const counts = sweep.counts.map((count) => ({ ...count, gridlocks: 1 }))
    expect(throughput({ ...sweep, counts }, { ghost }).finding).toContain('standstill with every count')
  })
})
