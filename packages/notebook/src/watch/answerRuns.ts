/** The thread's side of a notebook that is being written: carries it out as often as it is told to, and says what comes of it. Results of studies live on from run to run. */
import { dirname, resolve } from 'node:path'
import { formatProblems } from '@loopwright/scenario'
import type { Store } from '@loopwright/study/machine'
import type { Cell } from '../cells/cell.ts'
import { faultText } from '../load/fault.ts'
import { type LoadedNotebook, lineOf, placeOf, textOf } from '../load/loadNotebook.ts'
import type { Effects } from '../runner/effects.ts'
import { carryOut } from '../runner/run.ts'
import { keysOf } from './parts.ts'
import type { FromThread, Outcome, Said, ToThread, WatchedOptions } from './protocol.ts'
import { type StudyMemory, studyMemory } from './recall.ts'

/** What the thread has of the world outside. */
export interface ThreadWorld extends Pick<Effects, 'readFile' | 'readBeside' | 'now' | 'pool' | 'store'> {
  readonly load: (path: string) => Promise<LoadedNotebook>
}

/** As far as it is used, of a thread to its parent. */
export interface Port {
  postMessage(message: FromThread): void
  on(event: 'message', hear: (message: ToThread) => void): unknown
}

/** Answers until the thread is ended from outside. */
export function answerRuns(port: Port, world: ThreadWorld): void {
  const memory = studyMemory()
  let stop = new AbortController()
  let before: Promise<void> = Promise.resolve()
  port.on('message', (message) => {
    stop.abort()
    if (message.kind === 'stop') return
    const { id, file, options } = message
    stop = new AbortController()
    const { signal } = stop
    const say = (said: Said): void => post(port, { ...said, id })
    before = before.then(async () => say({ kind: 'ended', outcome: await outcomeOf(file, options, { world, memory, signal, say }) }))
  })
}

/** What a notebook puts into a cell may be no data, such as a function in a chart of its own; a page shows what JSON holds of it. */
function post(port: Port, message: FromThread): void {
  try {
    port.postMessage(message)
  } catch (error) {
    if ((error as Error).name !== 'DataCloneError') throw error
    port.postMessage(JSON.parse(JSON.stringify(message)) as FromThread)
  }
}

interface Run {
  readonly world: ThreadWorld
  readonly memory: StudyMemory
  readonly signal: AbortSignal
  readonly say: (said: Said) => void
}

async function outcomeOf(file: string, options: WatchedOptions, run: Run): Promise<Outcome> {
  const { world, memory, signal, say } = run
  const beside = new Map<string, string>()
  const followed = new Set<string>([resolve(file)])
  let loaded: LoadedNotebook | null = null
  let collected: Cell[] = []
  const follow = (all: boolean): void => say({ kind: 'follow', files: [...followed, ...(loaded?.files ?? [])], all })
  const effects: Effects = {
    ...world,
    signal,
    log: () => {},
    progress: (line) => say({ kind: 'progress', line }),
    writeFile: () => Promise.reject(new Error('a notebook that is being written writes no file')),
    recall: memory.recall,
    places: { of: placeOf, line: lineOf },
    importModule: async (path) => {
      loaded = await world.load(path)
      follow(true)
      return loaded.exports
    },
    readFile: async (path) => {
      followed.add(resolve(path))
      follow(true)
      const text = await world.readFile(path)
      beside.set(path, text)
      return text
    },
    readBeside: (scenarioFile, path) => {
      followed.add(resolve(dirname(scenarioFile), path))
      const text = world.readBeside?.(scenarioFile, path) ?? null
      beside.set(path, text ?? '')
      return text
    },
  }
  memory.begin()
  try {
    const result = await carryOut(file, effects, options, {
      onScenario: ({ question, scenario }) => {
        const { steps, files } = loaded!
        const [entry, ...others] = files.map((path) => textOf(path))
        const keys = keysOf(steps, entry!, [question, ...beside.values(), ...others])
        say({ kind: 'begun', question, scenarioName: scenario.name, steps, keys })
        return (cell) => collected.push(cell)
      },
      onStep: (mark, state) => {
        say({ kind: 'step', mark, state, cells: state === 'running' ? [] : collected })
        collected = []
      },
    })
    follow(result.status === 'wrong scenario')
    if (signal.aborted) return { kind: 'stopped' }
    if (result.status === 'wrong scenario')
      return { kind: 'trouble', text: formatProblems(result.problems, result.scenarioText, result.scenarioFile) }
    memory.end()
    const { cells, pageCells, faults } = result
    const rest = pageCells.filter((cell) => !cells.includes(cell))
    return {
      kind: 'done',
      cells,
      rest,
      left: collected,
      faults: faults.map(faultText),
      ...memory.counts(),
      store: storeText(world.store ?? null),
    }
  } catch (error) {
    follow(true)
    return signal.aborted ? { kind: 'stopped' } : { kind: 'trouble', text: error instanceof Error ? error.message : String(error) }
  }
}

function storeText(store: Store | null): string {
  const { damaged = 0, trouble = null } = store?.report ?? {}
  if (trouble !== null) return `store: ${trouble}; results are right, but not all are kept`
  return damaged === 0 ? '' : `store: ${damaged === 1 ? '1 damaged entry' : `${damaged} damaged entries`} dropped and computed again`
}
