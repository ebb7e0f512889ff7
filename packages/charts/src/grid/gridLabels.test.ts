import { expect, test } from 'vitest'
import { type CurvePoint, planMarks, spread } from './gridLabels.ts'

test('names at the ends move apart, and stay inside', () => {
  expect(spread([100, 101, 102], 10, 200)).toEqual([91, 101, 111])
  expect(spread([0, 1], 10, 200)).toEqual([0, 10])
  expect(spread([199, 200], 10, 200)).toEqual([190, 200])
})

test('the number of the plan stands where the marks are far: here below the line, at the right end', () => {
  const point = (at: number, mean: number): CurvePoint => ({ at, mean, curve: 0, low: mean, high: mean, best: false, tip: '' })
  const rows = [6, 7, 8, 9, 10].map((at) => point(at, at === 10 ? 330 : 300 + 5 * (at - 6)))
  expect(planMarks(320, rows, [280, 340])[1]).toMatchObject({ text: 'plan 320', align: 'start', edge: 'bottom' })
  const high = rows.map(({ at }) => point(at, at < 8 ? 322 : 338))
  expect(planMarks(320, high, [280, 340])[1]).toMatchObject({ align: 'end', edge: 'top' })
})
