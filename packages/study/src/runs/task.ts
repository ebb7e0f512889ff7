/** What a worker thread is asked, and what it does with it: the same code runs in the calling thread where there are no workers. */
import { createSimulator, type LineSpec, type RunResult, type Simulator, Trace, TRACE_KINDS } from '@loopwright/line'
import { type RowLayout, rowLayout, rowRoom, runRow } from './runRow.ts'
import { withCarriers } from '../change/withCarriers.ts'

export interface Task {
  /** number of the specification, as it was told to the worker */
  readonly line: number
  readonly carriers: number
  readonly seed: string
  /** replications from (included) … to (excluded) */
  readonly from: number
  readonly to: number
  /** what is wanted of each: its row, all that it tells, when products came and went, or all that it tells and its events */
  readonly want: Kept | 'traces'
  /** forces one of the two engines; default: the recursion where it holds. Changes no result. */
  readonly engine?: ForcedEngine
  /** which events are kept of what is traced; default: all */
  readonly events?: EventWish
}

/** What of a run is kept, and travels. */
export type Kept = 'rows' | 'results' | 'passages'

/** What runs have in common, whichever of them. */
export type RunKind = Omit<Task, 'from' | 'to'>

/** One of the two engines; both give the same numbers. */
export type ForcedEngine = 'events' | 'recursion'

export interface TaskResult {
  readonly rows: readonly Float64Array[]
  readonly results: readonly RunResult[]
  readonly passages: readonly Passages[]
  readonly traces: readonly TraceColumns[]
}

/** The result of a task of which nothing is known. */
export const NOTHING: TaskResult = { rows: [], results: [], passages: [], traces: [] }

/** When products came and went in a run: seconds from time 0, in their order. */
export interface Passages {
  readonly end: RunResult['end']['reason']
  readonly loadSeconds: Float64Array
  /** rejected ones too */
  readonly unloadSeconds: Float64Array
}

/** The events of a run as the engine keeps them; see `Trace` of the line. */
export interface TraceColumns {
  readonly seconds: ArrayLike<number>
  readonly kinds: ArrayLike<number>
  readonly places: ArrayLike<number>
  readonly carriers: ArrayLike<number>
  readonly details: ArrayLike<number>
}

/** Which events of a run are kept; default: all of them. */
export interface EventWish {
  /** seconds from time 0, both included */
  readonly fromSeconds?: number
  readonly toSeconds?: number
  /** places in TRACE_KINDS */
  readonly kinds?: readonly number[]
}

/** More events of a run are not kept: they would fill the memory, and the longest text that there can be. */
const EVENTS_MAX = 2_000_000

/** Keeps what is wished for. */
class Events extends Trace {
  readonly #from: number
  readonly #to: number
  readonly #kinds: ReadonlySet<number> | null

  constructor({ fromSeconds = Number.NEGATIVE_INFINITY, toSeconds = Number.POSITIVE_INFINITY, kinds }: EventWish) {
    super()
    this.#from = fromSeconds
    this.#to = toSeconds
    this.#kinds = kinds === undefined ? null : new Set(kinds)
  }

  override add(seconds: number, kind: number, place: number, carrier: number, detail: number): void {
    if (seconds < this.#from || seconds > this.#to || this.#kinds?.has(kind) === false) return
    if (this.length >= EVENTS_MAX) {
      const stretch = `${Number(this.seconds[0]!.toPrecision(6))} s to ${Number(seconds.toPrecision(6))} s`
      throw new RangeError(
        `from ${stretch} there are more than ${EVENTS_MAX} events, more than can be kept: ask for a shorter stretch of time`,
      )
    }
    super.add(seconds, kind, place, carrier, detail)
  }
}

/** Simulators are kept for the next task on the same line and count; the oldest go. */
const SIMULATORS_MAX = 64

/** Performs tasks. */
export class TaskRunner {
  readonly #lines = new Map<number, { spec: LineSpec; layout: RowLayout }>()
  readonly #simulators = new Map<string, Simulator>()

  /** Keeps a specification that tasks will name by its number. */
  learnLine(line: number, spec: LineSpec): void {
    this.#lines.set(line, { spec, layout: rowLayout(spec) })
  }

  perform(task: Task): TaskResult {
    const pieces = this.pieces(task)
    for (;;) {
      const piece = pieces.next()
      if (piece.done === true) return piece.value
    }
  }

  /** The same in pieces of some milliseconds; one task at a time. */
  *pieces(task: Task): Generator<undefined, TaskResult, undefined> {
    const known = this.#lines.get(task.line)
    if (known === undefined) throw new Error(`a task names line ${task.line}, which was not told before`)
    if (task.want === 'traces') return yield* tracedRuns(task, known.spec)
    if (task.want === 'passages') return yield* passagesOfRuns(task, known.spec)
    const simulator = this.#simulator(task, known.spec)
    const rows = task.want === 'rows' ? rowRoom(known.layout, task.to - task.from) : []
    const results: RunResult[] = []
    for (let replication = task.from; replication < task.to; replication += 1) {
      const result = yield* simulator.pieces({ seed: task.seed, replication })
      if (task.want === 'rows') runRow(known.layout, result, rows[replication - task.from])
      else results.push(result)
    }
    return { ...NOTHING, rows, results }
  }

  #simulator(task: Task, spec: LineSpec): Simulator {
    const key = `${task.line}/${task.carriers}/${task.engine}`
    const kept = this.#simulators.get(key)
    if (kept !== undefined) return kept
    const made = createSimulator(withCarriers(spec, task.carriers), task.engine === undefined ? {} : { engine: task.engine })
    this.#simulators.set(key, made)
    if (this.#simulators.size > SIMULATORS_MAX) this.#simulators.delete(this.#simulators.keys().next().value!)
    return made
  }
}

function* tracedRuns(task: Task, spec: LineSpec): Generator<undefined, TaskResult, undefined> {
  const results: RunResult[] = []
  const traces: TraceColumns[] = []
  for (let replication = task.from; replication < task.to; replication += 1) {
    const trace = new Events(task.events ?? {})
    results.push(yield* createSimulator(withCarriers(spec, task.carriers), { trace }).pieces({ seed: task.seed, replication }))
    const { seconds, kinds, places, carriers, details } = trace
    traces.push({ seconds, kinds, places, carriers, details })
  }
  return { ...NOTHING, results, traces }
}

const LOAD = TRACE_KINDS.indexOf('load')
const UNLOAD = TRACE_KINDS.indexOf('unload')

function* passagesOfRuns(task: Task, spec: LineSpec): Generator<undefined, TaskResult, undefined> {
  const passages: Passages[] = []
  for (let replication = task.from; replication < task.to; replication += 1) {
    const one = { ...task, from: replication, to: replication + 1, events: { kinds: [LOAD, UNLOAD] } }
    const { results, traces } = yield* tracedRuns(one, spec)
    const { kinds, seconds } = traces[0]!
    const secondsOf = (kind: number): Float64Array => Float64Array.from(seconds).filter((_, event) => kinds[event] === kind)
    passages.push({ end: results[0]!.end.reason, loadSeconds: secondsOf(LOAD), unloadSeconds: secondsOf(UNLOAD) })
  }
  return { ...NOTHING, passages }
}
