import { expect, test } from 'vitest'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { countdown } from './countdown.ts'

test('on a terminal, and cleared in the end; elsewhere nothing of what is quick', () => {
  const terminal = memoryShell({}, { terminal: true })
  const told = countdown(terminal, 'curves', 3)
  told.at(1)
  told.end()
  expect(terminal.said.err).toContain('curves: 1 of 3')
  const pipe = memoryShell()
  countdown(pipe, 'curves', 3).at(1)
  expect(pipe.said.err).toBe('')
})
