import { expect, test } from 'vitest'
import { stateWords } from './stateWords.ts'

const told = { simulated: '320 shifts', last: true, carriers: 12 }

test('as long as nothing is set: the count of the file, and that of the answer where it is another one', () => {
  const file = 'Nothing is changed: the line as the file has it, with 12 carriers; 320 shifts.'
  expect(stateWords(told, false, 11)).toBe(`${file} The answer above is about 11.`)
  expect(stateWords(told, false, 12)).toBe(file)
  expect(stateWords(told, false, null)).toBe(file)
  expect(stateWords({ ...told, last: false }, false, null)).toMatch(/320 shifts so far; the intervals narrow …$/)
})

test('of a change: from how many windows of each', () => {
  expect(stateWords(told, true, 11)).toBe('320 shifts of each.')
  expect(stateWords({ ...told, last: false }, true, 11)).toBe('320 shifts of each so far; the intervals narrow …')
})
