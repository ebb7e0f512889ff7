import { expect, test } from 'vitest'
import { wrap } from './wrap.ts'

test('breaks at blanks, never beyond the columns', () => {
  expect(wrap('the loop makes 330 units a shift', 12)).toBe('the loop\nmakes 330\nunits a\nshift')
})

test('a word longer than the line stands alone', () => {
  expect(wrap('a scenarios/outdoor.yaml b', 8)).toBe('a\nscenarios/outdoor.yaml\nb')
})

test('further lines are indented, line ends in the text stay', () => {
  expect(wrap('- one two three\nfour', 9, 2)).toBe('- one two\n  three\nfour')
})

test('a no-break space keeps number and unit together', () => {
  expect(wrap('known to 1\u202f234 s', 11)).toBe('known to\n1\u202f234 s')
})

test('a sign stays with its number', () => {
  expect(wrap('falls by 1 % at most', 10)).toBe('falls by\n1 % at\nmost')
  expect(wrap('known to ± 1', 10)).toBe('known to\n± 1')
})
