/** Ctrl-C before anything has been simulated: every command ends in a sentence. */
import { expect, test } from 'vitest'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { SMALL_LINE } from '../../../tests/helpers/scenarioTexts.ts'
import { main } from './main.ts'

test.each([
  ['run', 'line.yaml', '--replications', '3'],
  ['run', 'line.yaml'],
  ['sweep', 'line.yaml', '--carriers', '3..4'],
  ['carriers', 'line.yaml'],
  ['forecast', 'line.yaml'],
  ['compare', 'line.yaml', '--set', 'fast: drive.speed=20 m/min'],
  ['grid', 'line.yaml', '--carriers', '3..4', '--set', 'drive.speed=10,15 m/min'],
  ['drivers', 'line.yaml'],
  ['losses', 'line.yaml'],
  ['order', 'line.yaml', '--move', 'B'],
  ['steady', 'line.yaml'],
  ['trace', 'line.yaml'],
] as const)('%j', async (...words) => {
  for (const more of [[], ['--json'], ['--csv', 'tables']]) {
    const stopped = new AbortController()
    stopped.abort()
    const shell = { ...memoryShell({ 'line.yaml': SMALL_LINE }), signal: stopped.signal }
    const code = await main([...words, ...more], shell)
    expect(shell.said.err).not.toContain('defect')
    expect(shell.said.err + shell.said.out).not.toMatch(/\n\s+at /)
    expect(code).toBe(130)
  }
})
