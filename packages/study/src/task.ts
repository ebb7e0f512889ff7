/** What a worker thread is asked, and what it does with it: the same code runs in the calling thread where there are no workers. */
import { createSimulator, type LineSpec, type RunResult, type Simulator } from '@loopwright/line'
import { type RowLayout, rowLayout, runRow } from './runRow.ts'
import { withCarriers } from './withCarriers.ts'

export interface Task {
  /** number of the specification, as it was told to the worker */
  readonly line: number
  readonly carriers: number
  readonly seed: string
  /** replications from (included) … to (excluded) */
  readonly from: number
  readonly to: number
  /** what is wanted of each: its row, or all that it tells */
  readonly want: 'rows' | 'results'
}

export interface TaskResult {
  readonly rows: readonly Float64Array[]
  readonly results: readonly RunResult[]
}

/** Simulators are kept for the next task on the same line and count; the oldest go. */
const SIMULATORS_MAX = 64

/** Performs tasks. */
export class TaskRunner {
  readonly #lines = new Map<number, { spec: LineSpec; layout: RowLayout }>()
  readonly #simulators = new Map<string, Simulator>()

  /** Tells a specification that tasks will name by its number. */
  tell(line: number, spec: LineSpec): void {
    this.#lines.set(line, { spec, layout: rowLayout(spec) })
  }

  perform(task: Task): TaskResult {
    const known = this.#lines.get(task.line)
    if (known === undefined) throw new Error(`a task names line ${task.line}, which was not told before`)
    const simulator = this.#simulator(task, known.spec)
    const rows: Float64Array[] = []
    const results: RunResult[] = []
    for (let replication = task.from; replication < task.to; replication += 1) {
      const result = simulator.run(task.seed, replication)
      if (task.want === 'rows') rows.push(runRow(known.layout, result))
      else results.push(result)
    }
    return { rows, results }
  }

  #simulator(task: Task, spec: LineSpec): Simulator {
    const key = `${task.line}/${task.carriers}`
    const kept = this.#simulators.get(key)
    if (kept !== undefined) return kept
    const made = createSimulator(withCarriers(spec, task.carriers))
    this.#simulators.set(key, made)
    if (this.#simulators.size > SIMULATORS_MAX) this.#simulators.delete(this.#simulators.keys().next().value!)
    return made
  }
}
