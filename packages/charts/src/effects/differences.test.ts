import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { type DifferenceRow, differences } from './differences.ts'

const row = (name: string, mean: number, half: number): DifferenceRow => ({
  name,
  mean,
  low: mean - half,
  high: mean + half,
  before: 334,
  after: 334 + mean,
})
const ROWS = [row('faster', 6, 2), row('same', 0.4, 3), row('slower', -21, 3)]
const figure = differences(ROWS, { per: 'shift', beside: 'today' })

test('what is more, and what is less; what holds zero is neither', () => {
  expect(figure.finding).toBe('More than today: faster (+6.0); less than today: slower (−21).')
  expect(differences([ROWS[1]!], { beside: 'today' }).finding).toBe('No difference from today is shown.')
})

test('all stand on one zero line, each with its interval', () => {
  const rules = marksOf(figure, 'rule')
  expect(rules[0]).toMatchObject({ x: [0, 0], ink: 'zero' })
  expect(rules.slice(1).map(({ x }) => x)).toEqual([
    [4, 8],
    [-2.6, 3.4],
    [-24, -18],
  ])
  const { from, to } = figure.drawing.across
  expect(from).toBeLessThanOrEqual(-24)
  expect(to).toBeGreaterThanOrEqual(8)
})

test('before and after stand beside the difference; the named one is marked', () => {
  const named = differences([{ ...ROWS[2]!, named: true }], { beside: 'today' })
  expect(marksOf(named, 'words').map(({ text }) => text)).toEqual(['slower', '−21 (334 → 313)'])
  expect(marksOf(named, 'dot')[0]).toMatchObject({ ink: 'chosenDot', x: -21 })
  expect(named.table.rows[0]!.cells).toEqual(['slower', '334', '313', '−21', '−24.0 to −18.0'])
  expect(() => differences([], { beside: 'today' })).toThrow(RangeError)
})

test('without chance there is no interval', () => {
  const fixed = differences([{ ...row('a', 2, 0), before: null, after: null }], { beside: 'today' })
  expect(marksOf(fixed, 'rule')).toHaveLength(1)
  expect(marksOf(fixed, 'words').map(({ text }) => text)).toEqual(['a', '+2'])
})
