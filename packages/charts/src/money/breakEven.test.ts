import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { breakEvenExample } from '../examples/breakEven.ts'
import { breakEven } from './breakEven.ts'

const line = (months: (factor: number) => number | null, at: number | null) => ({
  input: 'wage',
  text: (value: number) => `${value.toFixed(0)} €/h`,
  points: [0.8, 1, 1.2].map((factor) => ({ factor, value: 40 * factor, months: months(factor) })),
  breakEven: at,
})

test('the hurdle is a dashed line with its number, and today’s inputs are a dot', () => {
  const figure = breakEvenExample()
  expect(marksOf(figure, 'rule').filter(({ ink }) => ink === 'plan')[0]!.y).toEqual([24, 24])
  expect(marksOf(figure, 'words').map(({ text }) => text)).toContain('hurdle 24 months')
  expect(marksOf(figure, 'dot').filter(({ ink }) => ink === 'chosenDot')).toMatchObject([{ x: 1, y: 46.9 }])
  expect(marksOf(figure, 'path')).toHaveLength(3)
})

test('what is met stays met down to a value', () => {
  const { finding } = breakEven([line((factor) => 20 / factor, 33)], { name: 'loop', hurdleMonths: 24, months: 20 })
  expect(finding).toBe('“loop” pays back in 20 months, within the hurdle of 24. It stays met down to a wage of 33 €/h.')
})

test('what never pays back has no line and no dot, and says so', () => {
  const figure = breakEven([line(() => null, null)], { name: 'loop', hurdleMonths: 24, months: null })
  expect(figure.finding).toBe('“loop” never pays back with the inputs as they are. No value of wage that was looked at changes that.')
  expect(marksOf(figure, 'dot')).toEqual([])
  expect(figure.table.rows.every(({ cells }) => cells[3] === 'never')).toBe(true)
})

test('more lines than can be told apart are refused', () =>
  expect(() => breakEven([], { name: 'loop', hurdleMonths: 24, months: 1 })).toThrow(RangeError))
