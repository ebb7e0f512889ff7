import { expect, test } from 'vitest'
import { baseLineCount } from '../examples/baseLine.ts'
import { chosenMarks, planMarks, tipOf } from './throughputMarks.ts'

test('the number of the plan stands to the right of its line', () => {
  expect(planMarks(320)).toMatchObject([
    { y: [320, 320], ink: 'plan' },
    { x: 'to', text: ['plan', '320'] },
  ])
})

test('the word at the chosen count stands on the side with more room; a count that stood still is not chosen', () => {
  const align = (carriers: number) =>
    chosenMarks(baseLineCount(carriers), 5, 17).map((mark) => (mark.mark === 'words' ? mark.align : null))[1]
  expect([align(5), align(17)]).toEqual(['start', 'end'])
  expect(chosenMarks({ ...baseLineCount(10), gridlocks: 1 }, 5, 17)).toEqual([])
  expect(chosenMarks(undefined, 5, 17)).toEqual([])
})

test('what a count says of itself', () => {
  expect(tipOf(baseLineCount(10), 'shift')).toBe('10 carriers: 330 ± 1 units per shift; P10 316, P90 344')
  expect(tipOf({ ...baseLineCount(10), units: [], mean: null, p10: null }, 'shift')).toBe('10 carriers: not simulated')
})
