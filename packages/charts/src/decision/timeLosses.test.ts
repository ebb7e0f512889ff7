import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { timeLossesExample } from '../examples/decision.ts'
import { timeLosses } from './timeLosses.ts'

test('the bars hang on each other, from the planned time down to what produces', () => {
  const bars = marksOf(timeLossesExample(), 'area').map(({ x }) => x as [number, number])
  expect(bars[0]).toEqual([0, 450])
  for (const [index, [from]] of bars.slice(1, -1).entries()) expect(bars[index + 2]![1]).toBeCloseTo(from, 9)
  // 27 000 − 3 900 − 1 100 − 480 − 420 − 300 − 20 = 20 780 s
  expect(bars.at(-1)![1]).toBeCloseTo(20_780 / 60, 9)
})

test('small losses stand together, and the shares of the table sum to the planned time', () => {
  const { table, finding } = timeLossesExample()
  expect(table.rows.map(({ cells }) => cells[0])).toContain('others, each less than 0.2 %')
  const seconds = table.rows.map(({ values }) => values[1] as number)
  expect(seconds.slice(1).reduce((sum, one) => sum + one, 0)).toBeCloseTo(27_000, 9)
  expect(finding).toMatch(
    /^Tightness test produces 77.% of its planned time; most of the rest goes to exchanging carriers \(65 min a shift\)/,
  )
  expect(() => timeLosses([], { station: 'S', planned: 0, per: 'shift' })).toThrow(RangeError)
})
