import type { Command } from 'commander'
import { expect, test } from 'vitest'
import { EXAMPLES, examplesOf } from './examples.ts'
import { main } from '../main.ts'
import { program } from '../program.ts'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'

/** Words as a shell cuts them; what goes to a file is left out. */
const wordsOf = (line: string): string[] =>
  [...line.replace(/ > .*$/, '').matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!)

const all = Object.entries(EXAMPLES).flatMap(([command, lines]) => lines.map((line): [string, string] => [command, line]))

test.each(all)('of %s: loopwright %s', async (command, line) => {
  expect(line.startsWith(command)).toBe(true)
  const shell = memoryShell()
  const code = await main(wordsOf(line), shell)
  // the words are right where all that is missing is the file that they name
  const file = wordsOf(line).find((word) => /\.(yaml|csv|xlsx|ts)$/.test(word))
  if (line.startsWith('store merge')) expect([code, shell.said.err]).toEqual([2, expect.stringContaining('there is no store in "')])
  // no such machine is there
  else if (/^(work|queue) /.test(line))
    expect([code, shell.said.err]).toEqual([1, expect.stringMatching(/^there is no queue to be had at /)])
  else expect([code, shell.said.err]).toEqual(file === undefined ? [0, ''] : [2, `there is no file "${file}" here\n`])
})

test('each command has its own, none is of a command that is not there', () => {
  const under = (command: Command, words: readonly string[]): string[] =>
    command.commands.flatMap((each) => [[...words, each.name()].join(' '), ...under(each, [...words, each.name()])])
  expect(
    under(
      program(memoryShell(), 'loopwright', () => {}),
      [],
    ).toSorted(),
  ).toEqual(
    Object.keys(EXAMPLES)
      .filter((name) => name !== '')
      .toSorted(),
  )
  expect(examplesOf('nothing')).toBe('')
})

test('each command has at least two, which fit on 80 columns', () => {
  for (const name of Object.keys(EXAMPLES)) {
    const lines = examplesOf(name).trim().split('\n').slice(1)
    expect(lines.length).toBeGreaterThanOrEqual(2)
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80)
  }
})
