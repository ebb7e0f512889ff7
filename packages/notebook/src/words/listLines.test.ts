import { expect, test } from 'vitest'
import { listLines } from './listLines.ts'

test('all of few, the first of many', () => {
  expect(listLines([], 2)).toBe('')
  expect(listLines(['a', 'b'], 2)).toBe('- a\n- b')
  expect(listLines(['a', 'b', 'c'], 2, ' of 9 settings')).toBe('- a\n- b\n- and 1 more of 9 settings')
})
