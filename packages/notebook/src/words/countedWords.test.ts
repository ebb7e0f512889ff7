import { expect, test } from 'vitest'
import { counted } from './countedWords.ts'

test('one is said in the singular', () => {
  expect([0, 1, 2].map((count) => counted(count, 'zone'))).toEqual(['0 zones', '1 zone', '2 zones'])
  expect(counted(2, 'crew of two', 'crews of two')).toBe('2 crews of two')
})
