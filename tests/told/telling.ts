/**
 * What a command says of a line, in every way that it can be said. Runs are shared between the commands of a line, and run in
 * the thread that calls, since to start one takes longer than most of these studies.
 */
import { main } from '../../packages/cli/src/main.ts'
import { keptRuns } from '../helpers/keptRuns.ts'
import { type MemoryShell, memoryShell } from '../helpers/memoryShell.ts'
import { commandNamed, type ToldCommand } from './commands.ts'
import type { ToldLine } from './lines.ts'
import { type PageText, pageText } from './pageText.ts'

export interface Telling {
  readonly line: ToldLine
  readonly command: ToldCommand
  /** the exit code: 0, or 2 where it was refused */
  readonly code: number
  /** as on a terminal of 80 columns; of a refusal its reason */
  readonly text: string
  /** null where the command prints none, or was refused */
  readonly json: unknown
  readonly page: PageText | null
  /** of several runs of the line as it stands, with the share of each station in each state */
  readonly runs: unknown
}

const shells = new Map<string, MemoryShell>()
const PAGE = 'out/page.html'
const PAGE_MADE = `\nPage: ${PAGE}\n`
const RUNS = commandNamed('runs')

const tellings = new Map<string, Promise<Telling>>()

/** Told once, however many tests read it. */
export function tellingOf(line: ToldLine, command: ToldCommand): Promise<Telling> {
  const key = `${line.name} ${command.name}`
  const known = tellings.get(key) ?? tell(line, command)
  tellings.set(key, known)
  return known
}

async function tell(line: ToldLine, command: ToldCommand): Promise<Telling> {
  const files = command.files?.(line) ?? { [line.file]: line.text }
  const words = [command.command ?? command.name, Object.keys(files)[0]!, ...command.words(line)]
  const told = await typed(line, command.hasMore ? [...words, '--out', PAGE] : words, files)
  const refused = told.code !== 0
  // how far it came before it was refused is no matter of what is told, and depends on what others of the line have run
  const text = refused ? told.err.replace(/^done: .*\n/gm, '') : told.out.replace(PAGE_MADE, '')
  const base = { line, command, code: told.code, text }
  if (refused || !command.hasMore) return { ...base, json: null, page: null, runs: await runsOf(line) }
  const { out } = await typed(line, [...words, '--json'], files)
  const json = JSON.parse(out) as unknown
  return { ...base, json, page: pageText(told.page!), runs: command === RUNS ? json : await runsOf(line) }
}

/** What the command of several runs tells of a line: every rule on states may look there. */
const runsOf = async (line: ToldLine): Promise<unknown> => (await tellingOf(line, RUNS)).json

async function typed(
  line: ToldLine,
  words: readonly string[],
  files: Readonly<Record<string, string>> = {},
): Promise<{ code: number; out: string; err: string; page: string | undefined }> {
  let shell = shells.get(line.name)
  if (shell === undefined) {
    shell = memoryShell({ [line.file]: line.text }, { store: keptRuns() })
    shells.set(line.name, shell)
  }
  for (const [file, text] of Object.entries(files)) shell.files.set(file, text)
  shell.said.out = ''
  shell.said.err = ''
  shell.files.delete(PAGE)
  const code = await main(words, shell)
  return { code, ...shell.said, page: shell.files.get(PAGE) }
}
