/** A notebook that is being written: carried out again with each save, its page served as it grows. */
import { resolve } from 'node:path'
import type { Worker } from 'node:worker_threads'
import { browserScript } from '../assets.ts'
import type { Cell } from '../cells/cell.ts'
import type { StepMark } from '../load/steps.ts'
import type { Effects } from '../runner/effects.ts'
import type { RunNotebookOptions } from '../runner/run.ts'
import type { StepState } from '../runner/steps.ts'
import { writePage } from '../runner/writePage.ts'
import { type FileChanges, fileChanges } from './fileChanges.ts'
import { notebookThread } from './notebookThread.ts'
import { cellsOf, type Part, type PartState, plannedParts } from './parts.ts'
import type { Said, WatchedOptions } from './protocol.ts'
import { type Served, servePage } from './server.ts'

/** How a notebook is watched. */
export interface WatchOptions extends Pick<RunNotebookOptions, 'replications' | 'seed' | 'workers' | 'long' | 'command'> {
  /** starts a thread that carries notebooks out: it calls `answerRuns` */
  readonly startThread: () => Worker
  /** the first port to try; default: 8620 */
  readonly port?: number
  /** written after each whole run; default: nothing is */
  readonly out?: string
  /** told once, of the address */
  readonly onServed?: (address: string) => void
}

const PORT = 8620
/** milliseconds: a file that cannot be understood may be half written */
const HALF_WRITTEN_MS = 150
/** milliseconds between two lines of progress */
const NOTE_MS = 200
/** milliseconds after which a part that runs is named */
const SLOW_MS = 10_000

/** What is shown at a time. */
interface Shown {
  readonly question: string
  readonly scenarioName: string
  readonly parts: readonly Part[]
  /** what a page has besides */
  readonly rest: readonly Cell[]
}

/**
 * Serves the page of a notebook on this machine alone, and brings it up to date with each save of the notebook, of what it imports, of its scenario, or of a
 * table that the scenario names. Studies whose lines and requests are the same as before are not made again. Ends with the signal.
 *
 * The notebook runs in a thread of its own: one that never ends keeps neither the page nor the next save waiting.
 *
 * @param effects  `log` takes a line about each run
 */
export async function watchNotebook(
  file: string,
  effects: Pick<Effects, 'writeFile' | 'log' | 'progress' | 'now' | 'signal'>,
  options: WatchOptions,
): Promise<void> {
  const { signal } = effects
  const { replications, seed, workers, long } = options
  const asked: WatchedOptions = {
    ...(replications === undefined ? {} : { replications }),
    ...(seed === undefined ? {} : { seed }),
    ...(workers === undefined ? {} : { workers }),
    ...(long === undefined ? {} : { long }),
  }
  const thread = notebookThread(options.startThread)
  let shown: Shown | null = null
  let fault: string | null = null
  let note = 'Starting'
  let running = false
  /** the part that runs has run from then on; null: none does */
  let since: Date | null = null
  let version = 0
  /** what was said of the store */
  let kept = ''
  let made: { readonly version: number; readonly html: Promise<string> } | null = null
  const command = options.command ?? `loopwright notebook ${file} --watch`

  const page = async (): Promise<string | null> => {
    if (shown === null) return null
    if (made?.version !== version) {
      const { question, scenarioName, parts, rest } = shown
      made = { version, html: writePage({ question, scenarioName, date: effects.now(), command }, [...cellsOf(parts), ...rest]) }
    }
    return await made.html
  }
  const served: Served = await servePage({ title: file, script: await browserScript('watch'), page, port: options.port ?? PORT })
  const tell = (): void => {
    const parts = (shown?.parts ?? []).map(({ state, mark, cells }) => ({
      state,
      place: placeOfMark(mark),
      ids: cells.map(({ id }) => id),
    }))
    served.tell({ version, running, note, fault, since: since?.toISOString() ?? null, parts })
  }
  let told = 0
  const progress = (line: string): void => {
    effects.progress(line)
    note = line
    if (effects.now().getTime() - told < NOTE_MS) return
    told = effects.now().getTime()
    tell()
  }

  let pending = true
  let stop = new AbortController()
  let wake: () => void = () => {}
  const changes: FileChanges = await fileChanges([resolve(file)], () => {
    pending = true
    stop.abort()
    wake()
  })
  signal.addEventListener('abort', () => {
    stop.abort()
    wake()
  })
  /** a change comes, or the time is over */
  const wait = (milliseconds?: number): Promise<void> =>
    new Promise((done) => {
      wake = done
      if (pending || signal.aborted) done()
      else if (milliseconds !== undefined) setTimeout(done, milliseconds)
    })

  const once = async (): Promise<void> => {
    const started = effects.now().getTime()
    let parts: Part[] = []
    let at = -1
    let slow: NodeJS.Timeout | undefined
    /** other values of it while a run goes on: each change of the page is a new version */
    const set = (index: number, change: Partial<Part>, isNew: boolean): void => {
      parts = parts.with(index, { ...parts[index]!, ...change })
      shown = { ...shown!, parts }
      if (isNew) version += 1
      tell()
    }
    /** says of a part that goes on and on which it is */
    const watchPart = (mark: StepMark | null): void => {
      since = effects.now()
      slow = setTimeout(() => effects.log(`${placeOfMark(mark)}: running for ${SLOW_MS / 1000} s; a save ends it`), SLOW_MS)
    }
    const hear = (said: Exclude<Said, { kind: 'ended' }>): void => {
      if (said.kind === 'follow') changes.follow(said.files, said.all)
      else if (said.kind === 'progress') progress(said.line)
      else if (said.kind === 'begun') {
        fault = null
        running = true
        note = 'Running'
        parts = plannedParts(said.steps, said.keys, shown?.parts ?? [])
        shown = { question: said.question, scenarioName: said.scenarioName, parts, rest: shown?.rest ?? [] }
        if (said.steps.length === 0) {
          at = 0
          watchPart(null)
        }
        tell()
      } else {
        const { mark, state, cells } = said
        clearTimeout(slow)
        since = null
        if (state === 'running' || state === 'waiting') at += 1
        if (state === 'running') {
          watchPart(mark)
          if (parts[at]!.state === 'fresh') tell()
          else set(at, { state: 'running' }, false)
        } else set(at, { mark, cells, state: ended(state) }, true)
      }
    }
    const trouble = (text: string): void => {
      fault = text
      note = 'Nothing was run; what is shown is older.'
      effects.log(text)
    }
    const outcome = await thread.run(file, asked, hear, stop.signal)
    clearTimeout(slow)
    since = null
    if (outcome.kind === 'done') {
      // what failed outside of any step, or the whole body where there are none
      if (parts.every(({ mark }) => mark === null) || at < 0)
        parts = [{ key: '', mark: null, cells: outcome.cells, state: outcome.faults.length > 0 ? 'failed' : 'fresh' }]
      else {
        parts = parts.map((part, index) => (index > at ? { ...part, cells: [], state: 'fresh' } : part))
        if (outcome.left.length > 0) parts = [...parts, { key: '', mark: null, cells: outcome.left, state: 'failed' }]
      }
      shown = { ...shown!, parts, rest: outcome.rest }
      version += 1
      const { made: studies, recalled, faults } = outcome
      const seconds = ((effects.now().getTime() - started) / 1000).toFixed(1)
      note = `${faults.length === 0 ? 'All parts are fresh' : faults.length === 1 ? '1 part failed' : `${faults.length} parts failed`}; ${studiesText(studies, recalled)}, ${seconds} s.`
      effects.log([note, ...faults, ...(outcome.store === kept ? [] : [outcome.store])].join('\n'))
      kept = outcome.store
      if (options.out !== undefined) await effects.writeFile(options.out, (await page())!)
    } else {
      const isTrouble = outcome.kind === 'trouble' && !stop.signal.aborted && !(await superseded())
      if (isTrouble) trouble(outcome.text)
      if (shown !== null) {
        const left = (state: PartState): PartState => (state === 'running' || (isTrouble && state === 'fresh') ? 'stale' : state)
        shown = { ...shown, parts: shown.parts.map((part) => ({ ...part, state: left(part.state) })) }
      }
    }
    running = false
    tell()
  }
  /** another save came soon after: what could not be understood was half of it */
  const superseded = async (): Promise<boolean> => {
    await wait(HALF_WRITTEN_MS)
    return pending || signal.aborted
  }

  options.onServed?.(served.address)
  try {
    while (!signal.aborted) {
      if (pending) {
        pending = false
        stop = new AbortController()
        await once()
      } else await wait()
    }
  } finally {
    await Promise.all([thread.close(), changes.close(), served.close()])
  }
}

const ended = (state: StepState): PartState => (state === 'done' ? 'fresh' : state)

const placeOfMark = (mark: StepMark | null): string =>
  mark === null ? 'the body' : mark.line === mark.endLine ? `line ${mark.line}` : `lines ${mark.line} to ${mark.endLine}`

function studiesText(made: number, recalled: number): string {
  const count = (number: number): string => (number === 1 ? '1 study' : `${number} studies`)
  if (made + recalled === 0) return 'no study'
  if (recalled === 0) return `${count(made)} made`
  return made === 0 ? `${count(recalled)} as before` : `${count(made)} made, ${recalled} as before`
}
