/**
 * Spoilt texts for every reader until the time is over: `npm run fuzz [-- --minutes 60] [-- --seed 1] [-- --only scenario]`. A process of its own takes them; one
 * that hangs or uses more memory than is given is ended, its text is told, and the next one goes on behind it. Ends with 1 where something is found.
 */
import { spawn } from 'node:child_process'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { typedOption } from '../helpers/typedOption.ts'
import { READERS } from './readers.ts'
import { type Finding, textOf } from './tried.ts'

/** megabytes; milliseconds after which a text counts as one that hangs */
const MEMORY_MAX = 1024
const HANGS_MS = 20_000
/** the same finding is told so often */
const SAME_MAX = 2

const minutes = Number(typedOption('minutes') ?? '60')
const only = typedOption('only') ?? ''
const readers = only === '' ? Object.keys(READERS) : [only]
let next = Number(typedOption('seed') ?? '1') * 10_000_000
const end = performance.now() + minutes * 60_000
let count = 0
/** texts by reader */
const counts = new Map(readers.map((reader) => [reader, 0]))
const found = new Map<string, Finding[]>()

const keep = (finding: Finding): void => {
  const kind = `${finding.reader}: ${finding.what.split('\n')[0]!.replaceAll(/\d+/g, '#').slice(0, 120)}`
  const same = found.get(kind) ?? []
  found.set(kind, [...same, finding])
  if (same.length < SAME_MAX)
    process.stderr.write(`FOUND ${finding.reader} ${finding.number}: ${finding.what}\n${JSON.stringify(finding.text.slice(0, 600))}\n`)
}

/** One process, until it ends or is ended. */
async function shift(): Promise<void> {
  const seconds = (end - performance.now()) / 1000
  const words = [`--max-old-space-size=${MEMORY_MAX}`, '--conditions=loopwright-source', '--import', 'tsx']
  const child = spawn(
    process.execPath,
    [...words, fileURLToPath(new URL('shift.ts', import.meta.url)), String(seconds), String(next), 'Infinity', ...readers],
    { stdio: ['ignore', 'pipe', 'ignore'] },
  )
  let at: readonly [string, number] = [readers[0]!, next]
  let since = performance.now()
  let done = false
  const watch = setInterval(() => {
    if (performance.now() - since > HANGS_MS) child.kill('SIGKILL')
  }, 500)
  for await (const line of createInterface({ input: child.stdout })) {
    const told = JSON.parse(line) as { at?: readonly [string, number]; finding?: Finding; done?: number }
    since = performance.now()
    if (told.finding) keep(told.finding)
    if (told.done !== undefined) done = true
    if (told.at) {
      at = told.at
      counts.set(at[0], (counts.get(at[0]) ?? 0) + 1)
      if (++count % 2000 === 0) process.stderr.write(`${count} tried, ${[...found.values()].flat().length} found\n`)
    }
  }
  clearInterval(watch)
  if (!done) {
    keep({ reader: at[0], number: at[1], what: 'it hung, or used up the memory, or ended the process', text: textOf(...at).slice(0, 4000) })
    next = at[1] + 1
  } else next = Number.POSITIVE_INFINITY
}

while (performance.now() < end && Number.isFinite(next)) await shift()
process.stdout.write(
  `${count} spoilt texts for ${readers.length} readers in ${minutes} min, ${[...found.values()].flat().length} findings\n`,
)
for (const [reader, tries] of counts) process.stdout.write(`${String(tries).padStart(6)}  ${reader}\n`)
for (const [kind, all] of found) process.stdout.write(`${String(all.length).padStart(6)}  ${kind}\n`)
if (found.size > 0) process.exitCode = 1
