/** Runs several lines in the same random worlds: what comparisons, drivers, losses and station orders are made of. */
import type { LineSpec } from '@loopwright/line'
import { Tally, tQuantile } from '@loopwright/stats'
import { openPool, type Work } from './openPool.ts'
import type { Pool } from './pool.ts'
import { runChunks, withoutGap } from './runChunks.ts'
import { END_REASONS, type RowLayout, rowLayout } from './runRow.ts'
import { Schedule } from './schedule.ts'
import type { StudyOptions } from './studyOptions.ts'

/** The rows of one line: of replications from …, without a gap. */
export interface LineRows {
  readonly layout: RowLayout
  readonly rows: readonly Float64Array[]
}

export interface WorldRange {
  /** names other random worlds; default: those of the study */
  readonly seed?: string
  /** replications from (included) … to (excluded) */
  readonly from: number
  readonly to: number
}

export interface Runner {
  /** Runs each line in each world, or in those of its own. After a stop lines have fewer rows, and not all as many. */
  run(lines: readonly LineSpec[], worlds: WorldRange | readonly WorldRange[]): Promise<readonly LineRows[]>
  /** how many tasks are under way at once: a study that asks for fewer lets threads wait */
  readonly tasksAtOnce: number
  /** Says how many replications are still to come, as far as that is known, and what they decide: for the progress only. `more`: others may follow; default false. */
  expect(replications: number, deciding?: string, more?: boolean): void
  /** told to stop: what is in by then is all there will be */
  readonly stopped: boolean
}

/**
 * Opens the threads of a study of several lines, and ends them when it is done. Results are the same, to the last bit, for any number of threads.
 *
 * @param work   null: how much will be run is not known yet
 * @param study  is given the runner
 */
export async function withRunner<T>(options: StudyOptions, work: Work | null, study: (runner: Runner) => Promise<T>): Promise<T> {
  const { pool, close } = openPool(options, work)
  try {
    return await study(runnerOn(pool, options))
  } finally {
    await close()
  }
}

function runnerOn(pool: Pool, { seed: named, signal, onProgress }: StudyOptions): Runner {
  let done = 0
  let total = 0
  let what: string | undefined
  let settled = false
  const known = new Map<LineSpec, Tally>()
  return {
    tasksAtOnce: pool.size * pool.depth,
    async run(lines, worlds) {
      const ranges = lines.map((_, index) => ('from' in worlds ? worlds : worlds[index]!))
      const schedule = new Schedule(
        lines.length,
        ranges.map(({ from, to }) => ({ from: 0, to: to - from })),
      )
      const numbers = lines.map((line) => pool.line(line))
      const layouts = lines.map(rowLayout)
      const rows = lines.map((): Float64Array[] => [])
      total = Math.max(total, done + ranges.reduce((sum, { from, to }) => sum + to - from, 0))
      const tallies = lines.map((line) => known.get(line) ?? new Tally())
      for (const [index, line] of lines.entries()) known.set(line, tallies[index]!)
      await runChunks(pool, {
        schedule,
        taskOf: (chunk) => ({
          line: numbers[chunk.index]!,
          carriers: lines[chunk.index]!.carriers.count,
          seed: ranges[chunk.index]!.seed ?? named,
          from: ranges[chunk.index]!.from + chunk.from,
          to: ranges[chunk.index]!.from + chunk.to,
          want: 'rows',
        }),
        onResult: (chunk, result) => {
          for (const [index, row] of result.rows.entries()) {
            rows[chunk.index]![chunk.from + index] = row
            tallies[chunk.index]!.add(row[layouts[chunk.index]!.units]!)
          }
          schedule.learn(chunk.index, result.rows.at(-1)![layouts[chunk.index]!.events]!)
          done += chunk.to - chunk.from
          onProgress?.({
            done,
            total: Math.max(total, done),
            settled,
            recalled: pool.recalled,
            precision: worstPrecision(tallies),
            ...(what === undefined ? {} : { what }),
          })
        },
        signal,
      })
      return lines.map((_, index) => ({ layout: layouts[index]!, rows: withoutGap(rows[index]!) }))
    },
    expect(replications, deciding, more = false) {
      total = done + replications
      settled = !more
      what = deciding
    },
    get stopped() {
      return signal?.aborted === true
    },
  }
}

/** Output per window, by replication. */
export function unitsOf({ layout, rows }: LineRows): number[] {
  return rows.map((row) => row[layout.units]!)
}

/** How many runs ended so. */
export function endedBy({ layout, rows }: LineRows, reason: (typeof END_REASONS)[number]): number {
  return rows.filter((row) => row[layout.end] === END_REASONS.indexOf(reason)).length
}

/** The replications that every line has. */
export function inCommon(lines: readonly LineRows[]): LineRows[] {
  const least = Math.min(...lines.map(({ rows }) => rows.length))
  return lines.map(({ layout, rows }) => ({ layout, rows: rows.slice(0, least) }))
}

/** 0 where a mean is 0: there is no share of nothing. */
function worstPrecision(tallies: readonly Tally[]): number | null {
  let worst = 0
  for (const { count, mean = 0, sd = 0 } of tallies) {
    if (count < 2) return null
    if (mean > 0) worst = Math.max(worst, (tQuantile(0.975, count - 1) * sd) / Math.sqrt(count) / mean)
  }
  return worst
}
