import { expect, test } from 'vitest'
import { shellWord } from './shellWord.ts'

test('a shell takes each word as one, whatever stands in it', () => {
  expect(shellWord("it's; rm -rf $(x)")).toBe(`'it'\\''s; rm -rf $(x)'`)
  expect(shellWord('')).toBe("''")
  expect(shellWord('--carriers=5..17,20')).toBe('--carriers=5..17,20')
})
