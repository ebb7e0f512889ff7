import { expect, test } from 'vitest'
import { emptyTale } from './tale.ts'
import { terminalText } from '../terminal/terminal.ts'

test('where nothing was done the one sentence heads the page and is the answer', () => {
  const { question, cells } = emptyTale('Stopped before the first run was done: nothing to tell.')
  expect(question).toBe('Stopped before the first run was done: nothing to tell.')
  expect(cells.map((cell) => terminalText(cell))).toEqual([question])
})
