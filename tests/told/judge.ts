/** Every command on some lines: the text as a golden, and what must hold of every text. */
import { afterAll, describe, expect, test } from 'vitest'
import { COMMANDS, goesWith } from './commands.ts'
import { type Failure, isKnown, type Judgement, writeKnown } from './known.ts'
import type { ToldLine } from './lines.ts'
import { RULES } from './rules.ts'
import { type Telling, tellingOf } from './telling.ts'

const writes = process.env['TOLD'] === 'write'

const failuresOf = (told: Telling): Failure[] =>
  RULES.map(({ name, find }) => ({ rule: name, command: told.command.name, line: told.line.name, findings: find(told) })).filter(
    ({ findings }) => findings.length > 0,
  )

/** Declares the tests. */
export function judgeLines(lines: readonly ToldLine[]): void {
  const failures: Failure[] = []
  const judged: Judgement[] = []

  describe.each(lines)('$name', (line) => {
    const commands = COMMANDS.filter((command) => goesWith(command, line))

    test.each(commands)('$name', async (command) => {
      const told = await tellingOf(line, command)
      expect(told.text).not.toBe('')
      await expect(told.text).toMatchFileSnapshot(`goldens/${line.name}/${command.name}.txt`)
      const failed = failuresOf(told)
      failures.push(...failed)
      judged.push({ command: command.name, line: line.name })
      if (writes) return
      expect(failed.filter(({ rule }) => !isKnown(rule, command.name, line.name))).toEqual([])
      const mended = RULES.map(({ name }) => name).filter(
        (rule) => isKnown(rule, command.name, line.name) && !failed.some((failure) => failure.rule === rule),
      )
      expect(mended, 'is known to fail, and holds: take it out of known.json').toEqual([])
    })
  })

  afterAll(() => {
    if (writes) writeKnown(failures, judged)
  })
}
