/** Replications of one line as it stands: the runs themselves. */
import { completeLine, type GivenLine, type LineSpec, type RunResult } from '@loopwright/line'
import { checkReplications } from './asked.ts'
import { openPool, workOf } from './openPool.ts'
import type { Pool } from './pool.ts'
import { runChunks, withoutGap } from './runChunks.ts'
import { Schedule } from './schedule.ts'
import type { StudyOptions } from './studyOptions.ts'
import type { EventWish, Passages, Task, TaskResult, TraceColumns } from './task.ts'

/**
 * Runs a line several times.
 *
 * @param replications  how many runs, ≥ 1
 * @returns  runs of replications 0 … n − 1, in that order, the same for any number of workers; n is below `replications` only after a stop
 * @example (await replicate(line, { replications: 3 }, { seed: '1', workers: 0 })).map((run) => run.output) // => [123, 120, 121]
 */
export async function replicate(
  given: GivenLine,
  { replications }: { readonly replications: number },
  options: StudyOptions,
): Promise<RunResult[]> {
  const spec = completeLine(given)
  const { seed, signal, onProgress } = options
  checkReplications(replications)
  const schedule = new Schedule(1, replications)
  const { pool, close } = openPool(options, workOf(spec, [{ carriers: spec.carriers.count, replications }]))
  const runs: RunResult[] = []
  let done = 0
  try {
    const line = pool.line(spec)
    await runChunks(pool, {
      schedule,
      taskOf: ({ from, to }) => ({ line, carriers: spec.carriers.count, seed, from, to, want: 'results' }),
      onResult: ({ from, to }, { results }) => {
        for (const [index, run] of results.entries()) runs[from + index] = run
        schedule.learn(0, results.at(-1)!.events)
        done += to - from
        onProgress?.({ done, total: replications, settled: true, recalled: pool.recalled, precision: null })
      },
      signal,
    })
  } finally {
    await close()
  }
  return withoutGap(runs)
}

/** A run, and all its events. */
export interface TracedRun {
  readonly run: RunResult
  readonly trace: TraceColumns
}

/** Which run is traced, and which of its events are kept. */
export interface TraceRequest extends EventWish {
  /** which of the random worlds of the seed, from 0 */
  readonly replication: number
}

/**
 * One run with its events; a long one on a worker thread, so that it can be stopped.
 *
 * @returns            null after a stop
 * @throws RangeError  if more than two million events are to be kept
 * @example (await traceRun(line, { replication: 0 }, { seed: '1', workers: 0 })).run.output // => 123
 */
export async function traceRun(
  given: GivenLine,
  { replication: from, ...events }: TraceRequest,
  options: StudyOptions,
): Promise<TracedRun | null> {
  const [found = null] = await traceRuns(given, { from, to: from + 1, ...events }, options)
  if (found !== null) options.onProgress?.({ done: 1, total: 1, settled: true, recalled: 0, precision: null })
  return found
}

/** Several, in the order of replications: from (included) … to (excluded); after a stop there are fewer. */
export async function traceRuns(
  given: GivenLine,
  { from, to, ...events }: EventWish & { readonly from: number; readonly to: number },
  options: StudyOptions,
): Promise<TracedRun[]> {
  const spec = completeLine(given)
  const { pool, close } = openPool(options, workOf(spec, [{ carriers: spec.carriers.count, replications: to - from }]))
  try {
    const traced = ({ results, traces }: TaskResult): TracedRun[] => results.map((run, index) => ({ run, trace: traces[index]! }))
    return await runsOf(pool, spec, { from, to, want: 'traces', events }, traced, options, () => {})
  } finally {
    await close()
  }
}

/**
 * When products came and went in replications 0 … n − 1; after a stop there are fewer.
 *
 * @param onRuns  told how many have come in
 */
export const passagesOf = async (
  pool: Pool,
  spec: LineSpec,
  replications: number,
  options: StudyOptions,
  onRuns: (more: number) => void,
): Promise<Passages[]> =>
  await runsOf(pool, spec, { from: 0, to: replications, want: 'passages' }, ({ passages }) => passages, options, onRuns)

/** What tasks find out of each replication of one line, in that order; after a stop there are fewer. */
async function runsOf<T>(
  pool: Pool,
  spec: LineSpec,
  { from: first, to: end, ...what }: Pick<Task, 'from' | 'to' | 'want' | 'events'>,
  found: (result: TaskResult) => readonly T[],
  { seed, signal }: StudyOptions,
  onRuns: (more: number) => void,
): Promise<T[]> {
  const line = pool.line(spec)
  const runs: T[] = []
  await runChunks(pool, {
    schedule: new Schedule(1, [{ from: first, to: end }]),
    taskOf: ({ from, to }) => ({ line, carriers: spec.carriers.count, seed, from, to, ...what }),
    onResult: ({ from, to }, result) => {
      for (const [index, run] of found(result).entries()) runs[from - first + index] = run
      onRuns(to - from)
    },
    signal,
  })
  return runs.filter((each) => each !== undefined)
}
