import { expect, test } from 'vitest'
import { startQuestion } from './startQuestion.ts'

test('three questions, told apart by warm-up and calendar', () => {
  const from = (warmupSeconds: number) => ({ warmupSeconds, endSeconds: 60000 })
  expect(startQuestion(from(0), true)).toBe('shift from empty')
  expect(startQuestion(from(0), false)).toBe('shift from empty')
  expect(startQuestion(from(30000), true)).toBe('shift from yesterday')
  expect(startQuestion(from(30000), false)).toBe('steady state')
})
