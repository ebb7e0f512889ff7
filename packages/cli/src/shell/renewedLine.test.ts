import { expect, test } from 'vitest'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { renewedLine } from './renewedLine.ts'

test('on a terminal it is renewed ten times a second, and cleared for what stays', () => {
  const shell = memoryShell({}, { terminal: true, columns: 10 })
  const { show, say, clear } = renewedLine(shell)
  for (const [clock, text] of [
    [0, 'one'],
    [50, 'two'],
    [100, 'a long long line'],
  ] as const) {
    shell.clock = clock
    show(() => text)
  }
  say('it stays')
  clear()
  expect(shell.said.err.split('\r\u001b[2K')).toEqual(['', 'one', 'a long lo', 'it stays\n', ''])
})

test('where lines stay there is one every ten seconds, the first after ten', () => {
  const shell = memoryShell()
  const { show, say, clear } = renewedLine(shell)
  for (const clock of [0, 5_000, 10_000, 15_000, 19_999, 20_000]) {
    shell.clock = clock
    show(() => `at ${clock}`)
  }
  say('it stays')
  clear()
  expect(shell.said.err).toBe('at 10000\nat 20000\nit stays\n')
})
