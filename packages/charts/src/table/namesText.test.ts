import { expect, test } from 'vitest'
import { namesText } from './namesText.ts'

test('names in a sentence', () => {
  expect([[], ['Z1'], ['Z1', 'Z2'], ['Z1', 'Z2', 'Z3']].map((names) => namesText(names))).toEqual(['', 'Z1', 'Z1 and Z2', 'Z1, Z2 and Z3'])
})

test('of many the first, and how many more', () => {
  expect(namesText(['Z1', 'Z2', 'Z3'], 3)).toBe('Z1, Z2 and Z3')
  expect(namesText(['Z1', 'Z2', 'Z3', 'Z4'], 2)).toBe('Z1, Z2 and 2 more')
})
