import { expect, test } from 'vitest'
import { listWords } from './listWords.ts'

test('none, one, two, three', () =>
  expect([[], ['A'], ['A', 'B'], ['A', 'B', 'C']].map(listWords)).toEqual(['', 'A', 'A and B', 'A, B and C']))
