/** A comparison that is told while it grows: for somebody who watches the intervals narrow. */
import type { LineSpec } from '@loopwright/line'
import { callingThread } from '../runs/callingThread.ts'
import type { Pool } from '../runs/pool.ts'
import { rowLayout } from '../runs/runRow.ts'
import { inCommon, type LineRows, withRunner } from '../runs/runner.ts'
import type { GrowingOptions, StudyOptions } from '../runs/studyOptions.ts'
import { type CompareResult, comparisonOf, type LineAsked, linesAsked } from './comparison.ts'
import { type CompareRequest, refuseComparison } from './compareLines.ts'

/** Runs of lines, kept: a line that is asked for again goes on where it was. */
export interface GrowingComparison {
  /**
   * Compares the lines as `compareLines` does, first with few replications, then with more.
   *
   * @returns  the last stage that was told; null: none
   * @throws RangeError  as `compareLines`
   */
  compare(
    lines: readonly LineAsked[],
    request: GrowingComparisonRequest,
    options: GrowingOptions<CompareResult>,
  ): Promise<CompareResult | null>
}

/** What a growing comparison is asked. */
export interface GrowingComparisonRequest extends Pick<CompareRequest, 'level'> {
  /** numbers of replications, rising, each ≥ 2; the numbers of a stage are those of `compareLines` with as many */
  readonly stages: readonly number[]
}

interface Kept {
  readonly pool: Pool
  rows: LineRows
}

/** lines whose runs are kept; the one that was not asked for longest goes */
const KEPT_MAX = 8
/** replications between two looks at whether to stop */
const STEP = 5

/**
 * Comparisons in the calling thread, all in the worlds of one seed; lines are known by identity.
 *
 * @example (await growingComparison({ seed: '1' }).compare(['now', 'four'].map((name) => ({ name, line: name === 'now' ? line : withCarriers(line, 4), plan: null })), { stages: [2, 5] }, {})).replications // => 5
 */
export function growingComparison({ seed }: Pick<StudyOptions, 'seed'>): GrowingComparison {
  const kept = new Map<LineSpec, Kept>()
  const grow = async (line: LineSpec, to: number, signal: AbortSignal | undefined): Promise<LineRows> => {
    const known = kept.get(line) ?? { pool: callingThread(), rows: { layout: rowLayout(line), rows: [] } }
    // asked for last
    kept.delete(line)
    kept.set(line, known)
    if (kept.size > KEPT_MAX) kept.delete(kept.keys().next().value!)
    while (signal?.aborted !== true && known.rows.rows.length < to) {
      const { layout, rows } = known.rows
      const [more] = await withRunner({ seed, pool: known.pool, ...(signal === undefined ? {} : { signal }) }, null, (runner) =>
        runner.run([line], { from: rows.length, to: Math.min(to, rows.length + STEP) }),
      )
      known.rows = { layout, rows: [...rows, ...more!.rows] }
    }
    return known.rows
  }
  return {
    async compare(given, { stages, level = 0.95 }, { onStage, signal }) {
      const lines = linesAsked(given)
      for (const replications of stages) refuseComparison(lines, { seed, replications })
      let told: CompareResult | null = null
      for (const [index, replications] of stages.entries()) {
        const ran: LineRows[] = []
        for (const { line } of lines) {
          ran.push(await grow(line, replications, signal))
          if (signal?.aborted === true) return told
        }
        const common = inCommon(ran).map(({ layout, rows }) => ({ layout, rows: rows.slice(0, replications) }))
        told = comparisonOf(lines, common, { seed, replications, level })
        onStage?.(told, index === stages.length - 1)
      }
      return told
    },
  }
}
