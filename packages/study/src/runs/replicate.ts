/** Replications of one line as it stands: the runs themselves. */
import { createSimulator, type LineSpec, type RunResult } from '@loopwright/line'
import { openPool, type PoolOptions, workOf } from './openPool.ts'
import { runChunks } from './runChunks.ts'
import { Schedule } from './schedule.ts'
import type { TraceColumns } from './task.ts'

export interface ReplicateOptions {
  /** names the random worlds; not empty, without `/` */
  readonly seed: string
  /** ≥ 1 */
  readonly replications: number
}

export interface ReplicateThreadsOptions extends ReplicateOptions, PoolOptions {
  readonly onProgress?: (progress: { readonly done: number; readonly total: number; readonly recalled: number }) => void
  /** stops within a second; the runs that are in by then are given */
  readonly signal?: AbortSignal
}

/**
 * Runs a line several times on worker threads.
 *
 * @returns  runs of replications 0 … n − 1, in that order, the same for any number of workers; n is below `replications` only after a stop
 */
export async function replicate(spec: LineSpec, options: ReplicateThreadsOptions): Promise<RunResult[]> {
  const { seed, replications, signal, onProgress } = options
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
        onProgress?.({ done, total: replications, recalled: pool.recalled })
      },
      signal,
    })
  } finally {
    await close()
  }
  let whole = 0
  while (runs[whole] !== undefined) whole += 1
  return runs.slice(0, whole)
}

export interface TracedRun {
  readonly run: RunResult
  readonly trace: TraceColumns
}

/**
 * One run with all its events; a long one on a worker thread, so that it can be stopped.
 *
 * @param replication  which of the random worlds of the seed, from 0
 * @returns            null after a stop
 */
export async function tracedRun(
  spec: LineSpec,
  options: { readonly seed: string; readonly replication: number; readonly signal?: AbortSignal },
): Promise<TracedRun | null> {
  const { seed, replication: from, signal } = options
  const { pool, close } = openPool({}, workOf(spec, [{ carriers: spec.carriers.count, replications: 1 }]))
  let traced: TracedRun | null = null
  try {
    const task = { line: pool.line(spec), carriers: spec.carriers.count, seed, from, to: from + 1, want: 'traces' } as const
    await runChunks(pool, {
      schedule: new Schedule(1, 1),
      taskOf: () => task,
      onResult: (_, { results, traces }) => {
        traced = { run: results[0]!, trace: traces[0]! }
      },
      signal,
    })
  } finally {
    await close()
  }
  return traced
}

/** The same runs in the calling thread: for tests, and where there are no worker threads. */
export function replicateHere(spec: LineSpec, options: ReplicateOptions): RunResult[] {
  const simulator = createSimulator(spec)
  return Array.from({ length: options.replications }, (_, replication) => simulator.run(options.seed, replication))
}
