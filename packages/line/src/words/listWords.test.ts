import { expect, test } from 'vitest'
import { listWords } from './listWords.ts'

test('none, one, two, three', () =>
  expect([[], ['A'], ['A', 'B'], ['A', 'B', 'C']].map((items) => listWords(items))).toEqual(['', 'A', 'A and B', 'A, B and C']))

test('of many the first, and how many more', () => {
  expect(listWords(['A', 'B', 'C'], 3)).toBe('A, B and C')
  expect(listWords(['A', 'B', 'C', 'D', 'E'], 3)).toBe('A, B, C and 2 more')
  expect(listWords(['A', 'B'], 1)).toBe('A and 1 more')
})
