import { expect, test } from 'vitest'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { main } from '../main.ts'

async function typed(...words: readonly string[]): Promise<{ readonly code: number; readonly err: readonly string[] }> {
  const shell = memoryShell({ 'a.yaml': SMALL_LINE })
  const code = await main(words, shell)
  return { code, err: shell.said.err.trimEnd().split('\n') }
}

test('all values that options refuse are told at once, in the order in which they were typed', async () => {
  const { code, err } = await typed('sweep', 'a.yaml', '--replications', '0', '--carriers', '9..5', '--seed', 'a/b')
  expect(code).toBe(2)
  expect(err[0]).toMatch(/^--replications "0": /)
  expect(err[1]).toBe('--carriers "9..5": The range runs backwards; did you mean 5..9?')
  expect(err[2]).toMatch(/^--seed "a\/b": /)
  expect(err.filter((line) => line.startsWith('--'))).toHaveLength(3)
})

test('one alone is told as ever, once, and so with a word of a list', async () => {
  const one = await typed('sweep', 'a.yaml', '--replications', '0')
  expect([one.code, one.err.filter((line) => line.startsWith('--')).length]).toEqual([2, 1])
  const word = await typed('schema', '--of', 'nothing')
  expect([word.code, word.err.filter((line) => line.startsWith('--of "nothing": ')).length]).toEqual([2, 1])
})

test('beside an option that there is none of, and a file that is missing', async () => {
  const { code, err } = await typed('sweep', 'a.yaml', '--replications', '0', '--nonsense')
  expect(code).toBe(2)
  expect(err[0]).toContain("unknown option '--nonsense'")
  expect(err.join('\n')).toContain('--replications "0": ')
  expect((await typed('sweep', '--replications', '0')).err.join('\n')).toMatch(/missing required argument[\s\S]*--replications "0": /)
})
