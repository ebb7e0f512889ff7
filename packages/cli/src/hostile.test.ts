/** Scenarios and words that bring control characters: nothing of them may reach a terminal, and none may make a line of its own. */
import { expect, test } from 'vitest'
import { main } from './main.ts'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { EXACT_LINE } from '../../../tests/helpers/scenarioTexts.ts'

/** clears the screen, rings, sets the title of the window, colours by an 8-bit control, and looks like an end */
const EVIL = '\\e[2J\\a\\e]0;owned\\a\\u009b31m\\n\\ndone: 0 replications\\nPage: evil.html'
const HOSTILE = EXACT_LINE.replace('question: What does the law say?', `question: "Why ${EVIL}?"`)
  .replace('name: Exact loop', `name: "Loop ${EVIL}"`)
  .replace('name: Load', `name: "Load ${EVIL}"`)
  .replace('name: Unload', `name: "Unload ${EVIL}"`)
const KEY = EXACT_LINE.replace('  A: {', `  "A ${EVIL}": {`)
const files = { 'hostile.yaml': HOSTILE, 'key.yaml': KEY }

async function typed(words: readonly string[], colour = false): Promise<{ code: number; out: string; err: string }> {
  const shell = memoryShell(files, { terminal: true, colour })
  const code = await main(words, shell)
  return { code, ...shell.said }
}

const ESC = String.fromCodePoint(0x1b)
const OURS = new RegExp(`\\r${ESC}\\[2K|${ESC}\\[(?:1|22|1;3[125]|22;39)m`, 'g')

/** without what is ours: styles and the renewal of the line of progress */
const withoutOurs = (text: string): string => text.replaceAll(OURS, '')

test.each([
  [0, ['check', 'hostile.yaml']],
  [0, ['run', 'hostile.yaml', '--fresh']],
  [0, ['run', 'hostile.yaml', '--json', '--fresh']],
  [0, ['resolve', 'hostile.yaml']],
  [0, ['trace', 'hostile.yaml', '--to', '1 min']],
  [0, ['sweep', 'hostile.yaml', '--carriers', '3..4', '--replications', '2', '--workers', '1', '--fresh']],
  [0, ['compare', 'hostile.yaml', '--set', 'fewer: carriers.count=3', '--replications', '2', '--workers', '1', '--fresh']],
  [2, ['check', 'key.yaml']],
  [2, ['trace', 'hostile.yaml', '--station', 'X\u001b[2J\u0007']],
  [2, ['run', '\u001b]0;x\u0007.yaml']],
  [2, ['carriers', 'hostile.yaml', '--level', '\u009b1m']],
  [2, ['\u001b[2J']],
  [2, ['run', '--\u001b[2J']],
] as const)('code %i: %j', async (expected, words) => {
  for (const colour of [false, true]) {
    const { code, out, err } = await typed(words, colour)
    expect(code).toBe(expected)
    expect(out + err).toMatch(/\S/)
    for (const text of [out, err]) {
      expect(withoutOurs(text)).not.toMatch(/(?![\n\t])\p{Cc}/u)
      expect(text).not.toMatch(/^(done: 0 replications|Page: evil\.html)$/m)
    }
  }
})

test('JSON still says the very same', async () => {
  const { out } = await typed(['run', 'hostile.yaml', '--json', '--fresh'])
  expect(JSON.parse(out).scenario.name ?? '').toContain('\u001b[2J\u0007')
})
