/** A notebook that is being written: carried out again with each save, its page served as it grows. */
import { dirname, resolve } from 'node:path'
import { formatProblems } from '@loopwright/scenario'
import { browserScript } from '../assets.ts'
import type { Cell } from '../cells/cell.ts'
import { faultText } from '../load/fault.ts'
import { type LoadedNotebook, lineOf, placeOf, textOf } from '../load/loadNotebook.ts'
import type { StepMark } from '../load/steps.ts'
import type { Effects } from '../runner/effects.ts'
import { carryOut, type RunNotebookOptions } from '../runner/run.ts'
import type { StepState } from '../runner/steps.ts'
import { writePage } from '../runner/writePage.ts'
import { type FileChanges, fileChanges } from './fileChanges.ts'
import { cellsOf, keysOf, type Part, type PartState, plannedParts } from './parts.ts'
import { studyMemory } from './recall.ts'
import { type Served, servePage } from './server.ts'

/** How a notebook is watched. */
export interface WatchOptions extends Pick<RunNotebookOptions, 'replications' | 'seed' | 'workers' | 'command'> {
  readonly load: (path: string) => Promise<LoadedNotebook>
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
 * @param effects  `importModule` is not used; `log` takes a line about each run
 */
export async function watchNotebook(
  file: string,
  effects: Omit<Effects, 'importModule' | 'recall' | 'places'>,
  options: WatchOptions,
): Promise<void> {
  const { signal } = effects
  const memory = studyMemory()
  let shown: Shown | null = null
  let fault: string | null = null
  let note = 'Starting'
  let running = false
  let version = 0
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
    served.tell({ version, running, note, fault, parts })
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
    const beside = new Map<string, string>()
    let loaded: LoadedNotebook | null = null
    let parts: Part[] = []
    let at = -1
    let collected: Cell[] = []
    /** other values of it while a run goes on: each change of the page is a new version */
    const set = (index: number, change: Partial<Part>, isNew: boolean): void => {
      parts = parts.with(index, { ...parts[index]!, ...change })
      shown = { ...shown!, parts }
      if (isNew) version += 1
      tell()
    }
    const run: Effects = {
      ...effects,
      signal: stop.signal,
      log: () => {},
      progress,
      recall: memory.recall,
      places: { of: placeOf, line: lineOf },
      importModule: async (path) => {
        loaded = await options.load(path)
        changes.follow(loaded.files, true)
        return loaded.exports
      },
      readFile: async (path) => {
        followed.add(resolve(path))
        changes.follow([...followed, ...(loaded?.files ?? [])], true)
        const text = await effects.readFile(path)
        beside.set(path, text)
        return text
      },
      readBeside: (scenarioFile, path) => {
        followed.add(resolve(dirname(scenarioFile), path))
        const text = effects.readBeside?.(scenarioFile, path) ?? null
        beside.set(path, text ?? '')
        return text
      },
    }
    const followed = new Set<string>([resolve(file)])
    memory.begin()
    const trouble = (text: string): void => {
      fault = text
      note = 'Nothing was run; what is shown is older.'
      if (shown !== null) shown = { ...shown, parts: shown.parts.map((part) => ({ ...part, state: stale(part.state) })) }
      effects.log(text)
    }
    try {
      const result = await carryOut(file, run, options, {
        onScenario: ({ question, scenario }) => {
          fault = null
          running = true
          note = 'Running'
          const { steps, files } = loaded!
          const [entry, ...others] = files.map((path) => textOf(path))
          parts = plannedParts(steps, keysOf(steps, entry!, [question, ...beside.values(), ...others]), shown?.parts ?? [])
          shown = { question, scenarioName: scenario.name, parts, rest: shown?.rest ?? [] }
          if (steps.length === 0) at = 0
          tell()
          return (cell) => collected.push(cell)
        },
        onStep: (mark, state) => {
          if (state === 'running' || state === 'waiting') at += 1
          const before = parts[at]!
          if (state === 'running') {
            collected = []
            if (before.state !== 'fresh') set(at, { state: 'running' }, false)
            return
          }
          set(at, { mark, cells: collected, state: ended(state) }, true)
          collected = []
        },
      })
      changes.follow([...followed, ...loaded!.files], result.status === 'wrong scenario')
      if (stop.signal.aborted) return
      if (result.status === 'wrong scenario') {
        if (await superseded()) return
        trouble(formatProblems(result.problems, result.scenarioText, result.scenarioFile))
        return
      }
      // what failed outside of any step, or the whole body where there are none
      if (loaded!.steps.length === 0 || at < 0) {
        parts = [{ key: '', mark: null, cells: result.cells, state: result.faults.length > 0 ? 'failed' : 'fresh' }]
        shown = { ...shown!, parts }
        version += 1
      } else parts = shown!.parts.map((part, index) => (index > at ? { ...part, cells: [], state: 'fresh' } : part))
      if (collected.length > 0 && loaded!.steps.length > 0 && at >= 0)
        parts = [...parts, { key: '', mark: null, cells: collected, state: 'failed' }]
      shown = { ...shown!, parts, rest: result.pageCells.filter((cell) => !result.cells.includes(cell)) }
      version += 1
      memory.end()
      const { made: studies, recalled } = memory.counts()
      const seconds = ((effects.now().getTime() - started) / 1000).toFixed(1)
      const failed = result.faults.length
      note = `${failed === 0 ? 'All parts are fresh' : failed === 1 ? '1 part failed' : `${failed} parts failed`}; ${studiesText(studies, recalled)}, ${seconds} s.`
      effects.log([note, ...result.faults.map(faultText)].join('\n'))
      if (options.out !== undefined) await effects.writeFile(options.out, (await page())!)
    } catch (error) {
      changes.follow([...followed, ...((loaded as LoadedNotebook | null)?.files ?? [])], true)
      if (stop.signal.aborted || (await superseded())) return
      trouble(error instanceof Error ? error.message : String(error))
    } finally {
      running = false
      tell()
    }
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
    await changes.close()
    await served.close()
  }
}

const ended = (state: StepState): PartState => (state === 'done' ? 'fresh' : state)

const stale = (state: PartState): PartState => (state === 'fresh' || state === 'running' ? 'stale' : state)

const placeOfMark = (mark: StepMark | null): string =>
  mark === null ? 'the body' : mark.line === mark.endLine ? `line ${mark.line}` : `lines ${mark.line} to ${mark.endLine}`

function studiesText(made: number, recalled: number): string {
  const count = (number: number): string => (number === 1 ? '1 study' : `${number} studies`)
  if (made + recalled === 0) return 'no study'
  if (recalled === 0) return `${count(made)} made`
  return made === 0 ? `${count(recalled)} as before` : `${count(made)} made, ${recalled} as before`
}
