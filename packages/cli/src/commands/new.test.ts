import { expect, test } from 'vitest'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { main } from '../main.ts'

test('a folder with a line, a study, what editors read, and a README; and what to type next', async () => {
  const shell = memoryShell()
  expect(await main(['new', 'pilot'], shell)).toBe(0)
  expect([...shell.files.keys()]).toEqual(
    ['line.yaml', 'study.ts', 'tsconfig.json', 'scenario.schema.json', 'README.md'].map((name) => `pilot/${name}`),
  )
  expect(shell.said.out).toContain('cd pilot\nloopwright check line.yaml\n')
  expect(shell.said.out).toContain('npx loopwright')
  expect(shell.files.get('pilot/README.md')).toContain('npx loopwright')
})

test('a name with a blank is typed in quotes', async () => {
  const shell = memoryShell()
  expect(await main(['new', 'my line'], shell)).toBe(0)
  expect(shell.said.out).toContain("cd 'my line'\nloopwright check")
})

test('what is there already stays, and nothing else is written', async () => {
  const shell = memoryShell({ 'pilot/study.ts': 'mine' })
  expect(await main(['new', 'pilot'], shell)).toBe(2)
  expect(shell.said.err).toContain('"pilot" has study.ts already; nothing was written')
  expect([...shell.files]).toEqual([['pilot/study.ts', 'mine']])
})

test('a place where nothing may be written', async () => {
  const shell = memoryShell()
  expect(await main(['new', 'closed'], shell)).toBe(1)
  expect(shell.files.size).toBe(0)
})
