import { expect, test } from 'vitest'
import { capital, listWords } from './listWords.ts'

test('none, one, two, three', () =>
  expect([[], ['A'], ['A', 'B'], ['A', 'B', 'C']].map(listWords)).toEqual(['', 'A', 'A and B', 'A, B and C']))

test('a sentence begins with a capital, and nothing stays nothing', () =>
  expect(['today’s order', '', 'S5'].map(capital)).toEqual(['Today’s order', '', 'S5']))
