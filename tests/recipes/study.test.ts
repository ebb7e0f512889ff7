/** The recipe "Add a study or a command": each command has its row on the page of commands, and each that prints a document is told and judged. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Command } from 'commander'
import { expect, test } from 'vitest'
import { SCHEMAS } from '../../packages/cli/src/documents/schemaNames.ts'
import { program } from '../../packages/cli/src/program.ts'
import { memoryShell } from '../helpers/memoryShell.ts'
import { TOP } from '../tidy/sources.ts'
import { COMMANDS, DATA_COMMANDS } from '../told/commands.ts'

const under = (command: Command, words: readonly string[]): string[] =>
  command.commands.flatMap((each) => {
    const path = [...words, each.name()]
    return each.commands.length === 0 ? [path.join(' ')] : under(each, path)
  })
const commands = under(
  program(memoryShell(), 'loopwright', () => {}),
  [],
)
const page = readFileSync(join(TOP, 'packages/cli/README.md'), 'utf8')
const hasRow = (name: string, text = page): boolean => new RegExp(`^\\|[^|]*\`${name}[ \`]`, 'm').test(text)

test('each command has its row on the page of commands', () => {
  expect(commands.length).toBeGreaterThan(25)
  expect(commands.filter((name) => !hasRow(name))).toEqual([])
  expect(hasRow('steady', page.replace('| `steady FILE`', '| `still FILE`'))).toBe(false)
})

test('each that prints a document is told on lines and judged', () => {
  const told = new Set([...COMMANDS, ...DATA_COMMANDS].map(({ name, command }) => command ?? name))
  expect(SCHEMAS.filter((name) => commands.includes(name) && !told.has(name))).toEqual([])
})
