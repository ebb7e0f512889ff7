/** Runs what studies of single counts still miss. */
import type { LineSpec } from '@loopwright/line'
import type { CountStudy } from './countStudy.ts'
import type { Pool } from '../runs/pool.ts'
import { runChunks } from '../runs/runChunks.ts'
import { Schedule } from '../runs/schedule.ts'

/** One number of carriers in the worlds of one seed. */
export interface Part {
  readonly seed: string
  readonly study: CountStudy
  /** wanted in all; those that the study has already are not run again */
  readonly replications: number
  /** replications for each one of a part with pace 1; default 1 */
  readonly pace?: number
  /** replications of its first task; default 1 */
  readonly opening?: number
}

export interface PartOptions {
  readonly signal: AbortSignal | undefined
  /** threads that begin; the others follow when each part has begun; default: all */
  readonly openers?: number
  /** told how many replications have come in */
  readonly onRows: (done: number) => void
}

/** Replications that the parts still miss. */
export function missing(parts: readonly Part[]): number {
  return parts.reduce((sum, { study, replications }) => sum + Math.max(0, replications - study.tally.taken), 0)
}

/** After a stop each study holds replications 0 … n − 1 of its own n. Rejects with the first error that a run throws. */
export async function runParts(
  pool: Pool,
  spec: LineSpec,
  parts: readonly Part[],
  { signal, openers, onRows }: PartOptions,
): Promise<void> {
  const line = pool.line(spec)
  const schedule = new Schedule(
    parts.length,
    parts.map(({ study, replications, pace = 1, opening = 1 }) => ({
      from: study.tally.taken,
      to: replications,
      pace,
      opening,
      kin: study.carriers,
    })),
  )
  await runChunks(pool, {
    schedule,
    taskOf: ({ index, from, to }) => ({ line, carriers: parts[index]!.study.carriers, seed: parts[index]!.seed, from, to, want: 'rows' }),
    onResult: ({ index, from, to }, { rows }) => {
      const { study } = parts[index]!
      study.add(from, rows)
      schedule.learn(index, rows.at(-1)![study.layout.events]!)
      onRows(to - from)
    },
    signal,
    ...(openers === undefined ? {} : { openers }),
  })
}
