import { expect, test } from 'vitest'
import { COMMANDS, goesWith } from './commands.ts'
import { judgeLines } from './judge.ts'
import { KNOWN } from './known.ts'
import { LINES, lineNamed } from './lines.ts'
import { RULES } from './rules.ts'

// The pump line is judged in pump.test.ts, which needs the same runs.
judgeLines(LINES.filter(({ name }, index) => index % 2 === 0 && name !== 'pump-line'))

test('what is known to fail names rules, commands and lines that there are, and says why', () => {
  for (const [rule, { why, at }] of Object.entries(KNOWN)) {
    expect(RULES.map(({ name }) => name)).toContain(rule)
    expect(why).not.toBe('')
    for (const [name, lines] of Object.entries(at)) {
      const command = COMMANDS.find((one) => one.name === name)
      expect(command, name).toBeDefined()
      for (const line of lines) expect(goesWith(command!, lineNamed(line)), `${name} of ${line}`).toBe(true)
    }
  }
})
