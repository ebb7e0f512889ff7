/**
 * Whatever reads a text that somebody else may have written. Each is tried with its texts spoilt: it takes them or says in words what is wrong, in bounded
 * time, and leaves no trace in what all objects share.
 */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { readTable, readTimes, TableError } from '@loopwright/measure'
import { readScenario, writeScenario } from '@loopwright/scenario'
import { replicate } from '@loopwright/study'
import { folderStore } from '@loopwright/study/machine'
import { readJob } from '../../packages/study/src/queue/job.ts'
import { main } from '../../packages/cli/src/main.ts'
import { EXAMPLES } from '../../packages/cli/src/options/examples.ts'
import { memoryShell } from '../helpers/memoryShell.ts'
import { EXACT_LINE, OPEN_LINE, RING, SMALL_LINE } from '../helpers/scenarioTexts.ts'
import { mutated, one, type Whole, wholeOf } from './mutated.ts'

export interface Reader {
  /** null: nothing is wrong with how the text was taken */
  try(text: string): Promise<string | null> | string | null
  /** right texts, from which the spoilt ones are made */
  readonly texts: readonly string[]
  /** how a text is spoilt; null: as any text */
  readonly spoil: ((whole: Whole) => string) | null
}

const scenariosFolder = new URL('../../scenarios/', import.meta.url)
const SCENARIOS = [
  EXACT_LINE,
  OPEN_LINE,
  RING,
  SMALL_LINE,
  ...readdirSync(scenariosFolder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => readFileSync(new URL(name, scenariosFolder), 'utf8')),
]

/** milliseconds after which a command is told to stop, as by Ctrl-C */
const STOPPED_MS = 150
/** words of a command line that stand for a file of the shell in memory */
const FILES = { 'line.yaml': EXACT_LINE, 'open.yaml': OPEN_LINE, 'ring.yaml': RING, 'today.yaml': EXACT_LINE, 'proposal.yaml': RING }

const scenario: Reader = {
  texts: SCENARIOS,
  spoil: null,
  try(text) {
    const { scenario: found, problems } = readScenario(text, { files: () => null })
    if (found === null && !problems.some(({ severity }) => severity === 'error')) return 'no scenario, and no word why'
    const lines = text.split('\n').length
    const lost = problems.find(({ line, column }) => !(line >= 1 && line <= lines && column >= 1))
    if (lost !== undefined) return `a finding without a place: ${lost.code}`
    const odd = problems.find(({ message }) => /\b(?:NaN|Infinity|undefined|\[object)/.test(message.replaceAll(/"[^"]*"/g, '""')))
    if (odd !== undefined && !/NaN|Infinity|undefined/.test(text)) return `a figure that is none: ${odd.message}`
    if (found === null) return null
    const again = readScenario(writeScenario(found))
    const lostAgain = again.problems.find(({ severity }) => severity === 'error')
    return lostAgain === undefined ? null : `what was written cannot be read: ${lostAgain.message}`
  },
}

const commands: Reader = {
  texts: Object.values(EXAMPLES)
    .flat()
    .filter((line) => !/^(?:notebook|store)/.test(line)),
  spoil(whole) {
    const words = splitWords(one(commands.texts, whole))
    const at = whole(words.length)
    const spoilt = mutated(words[at]!, splitWords(one(commands.texts, whole)), whole).slice(0, 2000)
    if (whole(3) === 0) words.splice(at, 0, spoilt)
    else words[at] = spoilt
    return JSON.stringify(words)
  },
  async try(text) {
    const words = JSON.parse(text.startsWith('[') ? text : JSON.stringify(splitWords(text))) as string[]
    const stop = new AbortController()
    const shell = { ...memoryShell(FILES), signal: stop.signal }
    const timer = setTimeout(() => stop.abort(), STOPPED_MS)
    const code = await main(words, shell).finally(() => clearTimeout(timer))
    if (![0, 1, 2, 130].includes(code)) return `code ${code}`
    return defectIn(shell.said.err)
  },
}

const whatIsTold: Reader = {
  texts: SCENARIOS,
  spoil: null,
  async try(text) {
    const stop = new AbortController()
    const shell = { ...memoryShell({ 'line.yaml': text }), signal: stop.signal }
    const timer = setTimeout(() => stop.abort(), STOPPED_MS)
    const code = await main(['run', 'line.yaml', '--csv', 'tables', '--out', 'page.html'], shell).finally(() => clearTimeout(timer))
    if (![0, 1, 2, 130].includes(code)) return `code ${code}`
    const strange = [...shell.files.keys()].find((name) => !/^(?:line\.yaml|page\.html|tables\/[\w.-]+\.csv)$/.test(name))
    if (strange !== undefined) return `"${strange}" was written`
    const page = shell.files.get('page.html') ?? ''
    if (/<script>alert|<img src=x/.test(page)) return 'the page holds a tag of the scenario'
    return defectIn(shell.said.err)
  },
}

/** Made once: an entry of real runs, as a file. */
let kept: { readonly folder: string; readonly place: string; readonly bytes: Buffer; readonly told: string } | null = null

async function keptEntry(): Promise<NonNullable<typeof kept>> {
  if (kept !== null) return kept
  const folder = mkdtempSync(join(tmpdir(), 'loopwright-fuzz-'))
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }))
  const told = await runsFrom(folder)
  const name = readdirSync(folder, { recursive: true, encoding: 'utf8' }).find((file) => file.endsWith('.runs'))!
  const place = join(folder, name)
  kept = { folder, place, bytes: readFileSync(place), told }
  return kept
}

async function runsFrom(folder: string): Promise<string> {
  const { scenario: found } = readScenario(EXACT_LINE)
  return JSON.stringify(await replicate(found!.line, { replications: 2 }, { seed: 'fuzz', workers: 0, store: folderStore(folder) }))
}

const store: Reader = {
  texts: ['an entry of the store'],
  spoil: (whole) => String(whole(2 ** 31)),
  async try(text) {
    const { folder, place, bytes, told } = await keptEntry()
    const spoilt = mutated(bytes.toString('latin1'), [bytes.toString('latin1')], wholeOf(Number(text)))
    mkdirSync(join(place, '..'), { recursive: true })
    writeFileSync(place, Buffer.from(spoilt, 'latin1'))
    return (await runsFrom(folder)) === told ? null : 'a spoilt entry changed what is told'
  },
}

const TABLES = [
  'task;variant;operator;seconds\nfit;basic;A;48,2\nfit;comfort;B;60,1\nwire;basic;A;0:46\nwire;comfort;B;1:10\n',
  'Task,Cycle 1,Cycle 2,Cycle 3\nPlace frame,35.1,34.8,36.0\nWire,46,45,70\n',
  'when\ttask\ttime\n2026-01-05 06:00\tfit\t0.8 min\n2026-01-05 06:01\tfit\t49 s\n',
]

const table: Reader = {
  texts: TABLES,
  spoil: null,
  try(text) {
    try {
      const { observations, account } = readTimes(readTable(new TextEncoder().encode(text), 'times.csv'), { unit: 's' })
      if (observations.some(({ observedSeconds }) => !(Number.isFinite(observedSeconds) && observedSeconds >= 0)))
        return 'a time that is none'
      const refused = account.refusals.filter(({ wholeRow }) => wholeRow).length
      if (account.read + refused !== account.rows) return 'rows read and rows refused are not the rows of the file'
      return null
    } catch (error) {
      return error instanceof TableError ? null : `an error is thrown: ${(error as Error).stack}`
    }
  },
}

const JOBS = [
  JSON.stringify({
    mark: '0.1.0-0011',
    key: 'ab'.repeat(32),
    line: 'cd'.repeat(32),
    carriers: 4,
    seed: '1',
    from: 50,
    to: 100,
    want: 'rows',
  }),
]

const job: Reader = {
  texts: JOBS,
  spoil: null,
  try(text) {
    let data: unknown
    try {
      data = JSON.parse(text)
    } catch {
      data = text
    }
    try {
      const { from, to, key } = readJob(data)
      return from >= 0 && to > from && /^[0-9a-f]{64}$/.test(key) ? null : 'a job that nobody can do'
    } catch (error) {
      return error instanceof RangeError ? null : `an error is thrown: ${(error as Error).stack}`
    }
  },
}

export const READERS: Readonly<Record<string, Reader>> = {
  scenario,
  'command line': commands,
  'what is told of a scenario': whatIsTold,
  'entry of the store': store,
  'table of times': table,
  'job of a queue': job,
}

const splitWords = (line: string): string[] =>
  [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!).filter((word) => word !== '>')

const defectIn = (err: string): string | null =>
  /defect of loopwright|^\s+at .*\.[jt]s:\d+/m.test(err) ? `a defect: ${err.slice(0, 600)}` : null
