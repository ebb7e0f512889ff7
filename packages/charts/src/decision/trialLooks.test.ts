import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { trialLooksExample } from '../examples/decision.ts'
import { trialLooks } from './trialLooks.ts'

const look = { seconds: 3600, limit: 40, caught: 0.3, low: 42, middle: 46, high: 50 }
const options = { caption: '', note: '', counts: true }

test('band, border and counts stand above or below what half of the trials make', () => {
  const figure = trialLooksExample()
  expect(marksOf(figure, 'rule').filter(({ ink }) => ink === 'whisker')[1]!.y).toEqual([-4, 4])
  expect(marksOf(figure, 'dot').filter(({ ink }) => ink === 'openDot')).toHaveLength(7)
  // 54 counted after 90 min, 63 in half of the trials
  expect(marksOf(figure, 'dot').filter(({ ink }) => ink === 'chosenDot')[2]).toMatchObject({ x: 90, y: -9 })
})

test.each([
  [39, 'After 60 min 39 units were counted, fewer than the 40 below which the trial may end.'],
  [41, 'After 60 min 41 units were counted, below what nine of ten trials of a line that meets its forecast make by then (42 to 50).'],
  [46, 'After 60 min 46 units were counted, within what nine of ten trials of a line that meets its forecast make by then (42 to 50).'],
  [1, 'After 60 min 1 unit was counted, fewer than the 40 below which the trial may end.'],
  [null, 'By the end a line that meets its forecast makes 42 to 50 in nine of ten trials; no earlier count ends the trial.'],
])('%s counted', (count, says) => {
  expect(trialLooks([{ ...look, count }], options).finding).toBe(says)
})

test('without a look it is refused', () => expect(() => trialLooks([], options)).toThrow(RangeError))
