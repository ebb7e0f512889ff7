/** The carrier sweep: how much the line makes with each number of carriers, all in the same random worlds. */
import type { LineSpec } from '@loopwright/line'
import { bringRows, missing, type Part } from './bringRows.ts'
import { openPool, type PoolOptions } from './openPool.ts'
import { pilotBest, sweepAnswer } from './sweepAnswer.ts'
import { Counts, checkedCounts, checkReplications, PILOT_REPLICATIONS, pilotSeed, sweepResult } from './sweepAssembly.ts'
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

export interface CarrierSweepOptions extends SweepOptions, PoolOptions {
  readonly onProgress?: (progress: SweepProgress) => void
  /** stops the sweep within a second; what is in by then is the result, marked partial */
  readonly signal?: AbortSignal
}

export interface SweepProgress {
  /** replications, over all counts, those of the pilot too */
  readonly done: number
  readonly total: number
  /** of those done: how many came from the store */
  readonly recalled?: number
  /** half of the widest 95 % interval of a mean, over that mean; null while a count has fewer than 2 replications */
  readonly precision: number | null
}

/**
 * Simulates each number of carriers `replications` times on worker threads, and answers by Procedure W: pilot runs in worlds of their own choose the
 * reference, and these runs are walked down from it (see `sweepAnswer`). How many replications are enough is the caller's to say; `carrierStudy` finds out.
 *
 * Replication k of each count meets the same random world. The result is the same, to the last bit, for any number of workers.
 *
 * @param spec    the line; its own number of carriers does not enter
 * @param counts  numbers of carriers to try
 * @throws RangeError  if the line cannot take one of the counts; any error that a run throws
 */
export async function carrierSweep(spec: LineSpec, counts: readonly number[], options: CarrierSweepOptions): Promise<SweepResult> {
  const { signal, onProgress } = options
  const sweep = sweepParts(spec, counts, options)
  const total = missing(sweep.parts)
  const { pool, close } = openPool(options, total)
  let done = 0
  try {
    await bringRows(pool, spec, sweep.parts, {
      signal,
      onRows: (came) => {
        done += came
        onProgress?.({ done, total, recalled: pool.recalled, precision: sweep.judged.precision() })
      },
    })
  } finally {
    await close()
  }
  return sweep.result()
}

/** The same sweep in the calling thread: for tests, and where there are no worker threads. */
export function sweepHere(spec: LineSpec, counts: readonly number[], options: SweepOptions): SweepResult {
  const sweep = sweepParts(spec, counts, options)
  const runner = new TaskRunner()
  runner.tell(0, spec)
  for (const { seed, study, replications } of sweep.parts) {
    study.add(0, runner.perform({ line: 0, carriers: study.carriers, seed, from: 0, to: replications, want: 'rows' }).rows)
  }
  return sweep.result()
}

/** Pilot and judged runs side by side: what is there when the sweep is stopped goes together. One count alone needs no pilot. */
function sweepParts(
  spec: LineSpec,
  wanted: readonly number[],
  { seed, replications, plan = null }: SweepOptions,
): { readonly parts: readonly Part[]; readonly judged: Counts; readonly result: () => SweepResult } {
  checkReplications(replications)
  const counts = checkedCounts(spec, wanted)
  const pilot = new Counts(spec, pilotSeed(seed))
  const judged = new Counts(spec, seed)
  const piloted = counts.length === 1 ? [] : counts.map((carriers) => pilot.of(carriers))
  const parts = [
    ...counts.map((carriers) => ({ seed, study: judged.of(carriers), replications })),
    ...piloted.map((study) => ({ seed: pilot.seed, study, replications: Math.min(PILOT_REPLICATIONS, replications) })),
  ]
  return {
    parts,
    judged,
    result: () =>
      sweepResult(spec, judged.all(), { seed, replications, plan }, (told) => {
        if (told.length === 1) return sweepAnswer(told, told[0]!.carriers)
        return piloted.some((study) => study.units.length === 0) ? null : sweepAnswer(told, pilotBest(piloted))
      }),
  }
}
