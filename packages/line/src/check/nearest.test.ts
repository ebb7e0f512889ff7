import { expect, test } from 'vitest'
import { nearest } from './nearest.ts'

test.each([
  ['Z-O7', ['Z-06', 'Z-07'], 'Z-07'],
  ['drvie', ['drive', 'stops', 'loop'], 'drive'],
  ['acceleraton', ['speed', 'acceleration'], 'acceleration'],
  ['S 6', ['S5', 'S6'], 'S6'],
  ['Fit Panel', ['fitPanel', 'fitPipe'], 'fitPanel'],
  ['stop', ['stops', 'store'], 'stops'],
])('%s among %j', (word, known, expected) => {
  expect(nearest(word, known)).toBe(expected)
})

test('nothing is near where more than a third would have to change', () => {
  expect(nearest('Painting', ['Z01', 'Z02'])).toBeNull()
  expect(nearest('x', ['speed'])).toBeNull()
  expect(nearest('anything', [])).toBeNull()
})
