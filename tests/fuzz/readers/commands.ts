/** Command lines, carried out by a shell in memory and told to stop after a moment, as by Ctrl-C. */
import { main } from '../../../packages/cli/src/main.ts'
import { EXAMPLES } from '../../../packages/cli/src/options/examples.ts'
import { decisionOf } from '../../helpers/decisionText.ts'
import { memoryShell } from '../../helpers/memoryShell.ts'
import { EXACT_LINE, OPEN_LINE, RING } from '../../helpers/scenarioTexts.ts'
import { SHOP_BYTES, SHOP_FILES } from '../../helpers/shopTables.ts'
import { mutated, one } from '../mutated.ts'
import { defectIn, type Reader } from '../reader.ts'

/** milliseconds */
const STOPPED_MS = 150
/** files of the shell */
export const FILES: Readonly<Record<string, string>> = {
  'line.yaml': EXACT_LINE,
  'open.yaml': OPEN_LINE,
  'ring.yaml': RING,
  'today.yaml': EXACT_LINE,
  'proposal.yaml': RING,
  'line.decision.yaml': decisionOf('ring.yaml'),
  'weeks.csv': 'week,units,shifts\nW1,60,2\nW2,60,2\n',
  'tasks.csv': 'task,seconds,after\nfit,40,\ntest,30,fit\n',
  ...SHOP_FILES,
}

/** Carries a command out; what is wrong with how it ended, and the files that are there then. */
export async function commandOn(
  words: readonly string[],
  files: Readonly<Record<string, string>>,
): Promise<{ readonly fault: string | null; readonly files: ReadonlyMap<string, string> }> {
  const stop = new AbortController()
  const shell = { ...memoryShell(files, { bytes: SHOP_BYTES }), signal: stop.signal }
  const timer = setTimeout(() => stop.abort(), STOPPED_MS)
  const code = await main(words, shell).finally(() => clearTimeout(timer))
  return { fault: [0, 1, 2, 130].includes(code) ? defectIn(shell.said.err) : `code ${code}`, files: shell.files }
}

const lines = Object.values(EXAMPLES)
  .flat()
  .filter((line) => !/^(?:notebook|store|work|queue|new)/.test(line))

export const commandLine: Reader = {
  texts: lines,
  every: 8,
  spoil(whole) {
    const words = splitWords(one(lines, whole))
    const at = whole(words.length)
    const spoilt = mutated(words[at]!, splitWords(one(lines, whole)), whole).slice(0, 2000)
    if (whole(3) === 0) words.splice(at, 0, spoilt)
    else words[at] = spoilt
    return JSON.stringify(words)
  },
  async try(text) {
    const words = text.startsWith('[') ? (JSON.parse(text) as string[]) : splitWords(text)
    const { fault, files } = await commandOn(words, FILES)
    if (fault !== null) return fault
    // what is written is named, or lies in a folder that is
    const named = words.flatMap((word) => [word, word.slice(word.indexOf('=') + 1)])
    const strange = [...files.keys()].find(
      (file) => !Object.hasOwn(FILES, file) && !named.some((word) => file === word || file.startsWith(`${word.replace(/\/+$/, '')}/`)),
    )
    return strange === undefined ? null : `"${strange}" was written, which nobody named`
  },
}

const splitWords = (line: string): string[] =>
  [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare!).filter((word) => word !== '>')
