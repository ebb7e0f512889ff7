/** The carrier sweep: how much the line makes with each number of carriers, all in the same random worlds. */
import type { LineSpec } from '@loopwright/line'
import { createPool, type Pool } from './pool.ts'
import { runChunks } from './runChunks.ts'
import { Schedule } from './schedule.ts'
import { SweepAssembly } from './sweepAssembly.ts'
import type { SweepResult } from './sweepResult.ts'
import { TaskRunner } from './task.ts'

export interface SweepOptions {
  /** names the random worlds; not empty, without `/` */
  readonly seed: string
  /** per count, ≥ 1 */
  readonly replications: number
  /** units wanted per window; default null: no plan */
  readonly plan?: number | null
}

export interface CarrierSweepOptions extends SweepOptions {
  /** threads, ≥ 1; default: one per core. Changes no result. */
  readonly workers?: number
  /** threads that are there already; they are left running */
  readonly pool?: Pool
  readonly onProgress?: (progress: SweepProgress) => void
  /** stops the sweep within a second; what is in by then is the result, marked partial */
  readonly signal?: AbortSignal
}

export interface SweepProgress {
  /** replications, over all counts */
  readonly done: number
  readonly total: number
  /** half of the widest 95 % interval of a mean, over that mean; null while a count has fewer than 2 replications */
  readonly precision: number | null
}

/**
 * Simulates each number of carriers `replications` times on worker threads, and answers by the rule of `sweepAnswer`.
 *
 * Replication k of each count meets the same random world. The result is the same, to the last bit, for any number of workers.
 *
 * @param spec    the line; its own number of carriers does not enter
 * @param counts  numbers of carriers to try
 * @throws RangeError  if the line cannot take one of the counts; any error that a run throws
 */
export async function carrierSweep(spec: LineSpec, counts: readonly number[], options: CarrierSweepOptions): Promise<SweepResult> {
  const { seed, replications, signal, onProgress } = options
  const assembly = new SweepAssembly(spec, counts, { seed, replications, plan: options.plan ?? null })
  const total = replications * assembly.counts.length
  const schedule = new Schedule(assembly.counts.length, replications)
  const pool = options.pool ?? createPool(options.workers, total)
  let done = 0
  try {
    const line = pool.line(spec)
    await runChunks(pool, {
      schedule,
      taskOf: ({ index, from, to }) => ({ line, carriers: assembly.counts[index]!, seed, from, to, want: 'rows' }),
      onResult: ({ index, from, to }, { rows }) => {
        const study = assembly.studies[index]!
        study.add(from, rows)
        schedule.learn(index, rows.at(-1)![study.layout.events]!)
        done += to - from
        onProgress?.({ done, total, precision: assembly.precision() })
      },
      signal,
    })
  } finally {
    if (options.pool === undefined) await pool.close()
  }
  return assembly.result()
}

/** The same sweep in the calling thread: for tests, and where there are no worker threads. */
export function sweepHere(spec: LineSpec, counts: readonly number[], options: SweepOptions): SweepResult {
  const { seed, replications } = options
  const assembly = new SweepAssembly(spec, counts, { seed, replications, plan: options.plan ?? null })
  const runner = new TaskRunner()
  runner.tell(0, spec)
  assembly.counts.forEach((carriers, index) => {
    const { rows } = runner.perform({ line: 0, carriers, seed, from: 0, to: replications, want: 'rows' })
    assembly.studies[index]!.add(0, rows)
  })
  return assembly.result()
}
