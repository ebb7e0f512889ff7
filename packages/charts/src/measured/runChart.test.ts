import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { runChart } from './runChart.ts'

const times = [50, 51, 49, 90].map((seconds, index) => ({ seconds, operator: index % 2 === 0 ? 'A' : 'B', line: index + 2 }))

test('times far out are open and told with their lines', () => {
  const figure = runChart({ name: 'wire', times, mean: 60, fences: [40, 60], slope: null })
  expect(marksOf(figure, 'dot').map(({ ink, shape }) => [ink, shape])).toEqual([
    ['dot', 'circle'],
    ['dot', 'square'],
    ['dot', 'circle'],
    ['openDot', 'square'],
  ])
  expect(figure.finding).toBe('wire, 4 times in their order: no drift shows in them; far from the others: line 5.')
  expect(figure.table.rows.map(({ cells }) => cells.at(-1))).toEqual(['', '', '', 'yes'])
})

test('a drift is told and drawn', () => {
  const figure = runChart({ name: 'wire', times: times.map((one) => ({ ...one, operator: '' })), mean: 60, fences: null, slope: -2 })
  expect(figure.finding).toContain('from the first to the last they fall by 6.0 s')
  expect(marksOf(figure, 'rule').some(({ ink, y }) => ink === 'line' && Number(y[0]) === 63 && Number(y[1]) === 57)).toBe(true)
  expect(() => runChart({ name: '', times: [], mean: 60, fences: null, slope: null })).toThrow(RangeError)
})
