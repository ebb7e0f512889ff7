/** A carrier sweep that is told while it grows: for somebody who watches the curve narrow. */
import { completeLine, type GivenLine, type LineSpec } from '@loopwright/line'
import { checkPlan, checkReplications } from '../runs/asked.ts'
import { callingThread } from '../runs/callingThread.ts'
import { lineHasChance } from '../runs/lineChance.ts'
import type { Pool } from '../runs/pool.ts'
import type { GrowingOptions, StudyOptions } from '../runs/studyOptions.ts'
import { runParts } from './runParts.ts'
import { Counts, checkedCounts, type SweepRequest, sweepResult } from './sweepAssembly.ts'
import type { SweepResult } from './sweepResult.ts'

/** Runs of lines with several numbers of carriers, kept: a line that is asked for again goes on where it was. */
export interface GrowingSweep {
  /**
   * Sweeps a line as `sweepCarriers` does, first with few replications, then with more; without the pilot, and so without an answer.
   *
   * @throws RangeError  as `sweepCarriers`
   */
  sweep(line: GivenLine, request: GrowingSweepRequest, options: GrowingOptions<SweepResult>): Promise<void>
}

/** What a growing sweep is asked. */
export interface GrowingSweepRequest extends Pick<SweepRequest, 'plan'> {
  readonly counts: readonly number[]
  /** numbers of replications of each count, rising, each ≥ 1; the counts of a stage are those of `sweepCarriers` with as many */
  readonly stages: readonly number[]
}

interface Kept {
  readonly pool: Pool
  readonly studies: Counts
}

/** lines whose runs are kept; the one that was not asked for longest goes */
const KEPT_MAX = 4

/**
 * Sweeps in the calling thread, all in the worlds of one seed; lines are known by identity.
 *
 * @example await new Promise((told) => void growingSweep({ seed: '1' }).sweep(line, { counts: [2, 3], plan: null, stages: [5] }, { onStage: ({ counts }) => told(counts.map(({ units }) => units.length)) })) // => [5, 5]
 */
export function growingSweep({ seed }: Pick<StudyOptions, 'seed'>): GrowingSweep {
  const kept = new Map<LineSpec, Kept>()
  return {
    async sweep(given, { counts, plan, stages }, { onStage, signal }) {
      const line = completeLine(given)
      for (const replications of stages) checkReplications(replications)
      checkPlan(plan)
      const asked = checkedCounts(line, counts)
      const known = kept.get(line) ?? { pool: callingThread(), studies: new Counts(line, seed) }
      // asked for last
      kept.delete(line)
      kept.set(line, known)
      if (kept.size > KEPT_MAX) kept.delete(kept.keys().next().value!)
      const all = lineHasChance(line) ? stages : [1]
      for (const [index, replications] of all.entries()) {
        const studies = asked.map((carriers) => known.studies.of(carriers))
        const parts = studies.map((study) => ({ seed, study, replications }))
        await runParts(known.pool, line, parts, { signal, onRows: () => {} })
        if (signal?.aborted === true) return
        // those of a later stage are in already where the line was asked for before
        const most = Math.min(...studies.map(({ units }) => units.length))
        if (index < all.length - 1 && most >= all[index + 1]!) continue
        onStage?.(
          sweepResult(line, studies, { seed, replications: most, plan }, () => null),
          index === all.length - 1,
        )
      }
    },
  }
}
