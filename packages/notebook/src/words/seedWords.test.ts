import { expect, test } from 'vitest'
import { seedWords } from './seedWords.ts'

test('the seed is named with what it is for', () => {
  expect(seedWords('a b')).toBe('seed a b (the same seed, the same numbers)')
})
