import { expect, test } from 'vitest'
import { figuresByWord } from './figures.ts'
import { heightFindings } from './people.ts'
import { NOTHING_GIVEN } from './screening.ts'

test('hands that two sources judge are one figure: above where one of them says so', () => {
  const hands = (height: number) =>
    figuresByWord(heightFindings({ ...NOTHING_GIVEN, heights: [{ place: 'mounting', height, work: 'light' }] }))
  const what = 'hands at mounting, light work, standing'
  // 87–117 cm by one, 86–94 cm by the other
  expect(hands(0.95)).toEqual({ 'above guidance value': [what], 'within guidance value': [], 'not checked': [] })
  expect(hands(0.9)).toEqual({ 'above guidance value': [], 'within guidance value': [what], 'not checked': [] })
  expect(hands(1.3)).toEqual({ 'above guidance value': [what], 'within guidance value': [], 'not checked': [] })
})

test('a figure that one source judges and another may not is not one that nobody checked', () => {
  const words = figuresByWord([
    { what: 'speed', word: 'not checked' },
    { what: 'speed', word: 'within guidance value' },
    { what: 'gap', word: 'not checked' },
  ])
  expect(words).toEqual({ 'above guidance value': [], 'within guidance value': ['speed'], 'not checked': ['gap'] })
})
