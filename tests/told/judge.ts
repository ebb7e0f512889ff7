/** Every command on some lines: the text as a golden, and what must hold of every text. */
import { describe, expect, test } from 'vitest'
import { COMMANDS, goesWith, type ToldCommand } from './commands.ts'
import type { ToldLine } from './lines.ts'
import { RULES } from './rules.ts'
import { type Telling, tellingOf } from './telling.ts'

const failuresOf = (told: Telling): { readonly rule: string; readonly findings: readonly string[] }[] =>
  RULES.map(({ name, find }) => ({ rule: name, findings: find(told) })).filter(({ findings }) => findings.length > 0)

/** Declares the tests. */
export function judgeLines(lines: readonly ToldLine[], all: readonly ToldCommand[] = COMMANDS): void {
  describe.each(lines)('$name', (line) => {
    const commands = all.filter((command) => goesWith(command, line))

    test.each(commands)('$name', async (command) => {
      const told = await tellingOf(line, command)
      expect(told.text).not.toBe('')
      await expect(told.text).toMatchFileSnapshot(`goldens/${line.name}/${command.name}.txt`)
      expect(failuresOf(told)).toEqual([])
    })
  })
}
