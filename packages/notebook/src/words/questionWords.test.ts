import { expect, test } from 'vitest'
import { questionFor } from './questionWords.ts'

test('the question of the scenario stands where it is answered', () => {
  const carriers = { question: 'How many carriers does the base line need to make 320 a shift?' }
  expect(questionFor('carriers', carriers, 'loop')).toBe(carriers.question)
  expect(questionFor('output', carriers, 'loop')).toBe('What does the loop make?')
  const output = { question: 'What throughput may I promise?' }
  expect(questionFor('output', output, 'open line')).toBe(output.question)
  expect(questionFor('carriers', output, 'open line')).toBe('How many carriers does the open line need?')
  expect(questionFor('output', { question: 'Does another order help?' }, 'line')).toBe('What does the line make?')
})
