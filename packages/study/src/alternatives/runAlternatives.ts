/** Ways to build a line, run in the same worlds: what each makes, and what its people push, pull and walk. */
import { type LineSpec, TRACE_KINDS } from '@loopwright/line'
import { compareLines, refuseComparison } from '../compare/compareLines.ts'
import { type CompareResult, type LineAsked, linesAsked } from '../compare/comparison.ts'
import { isOthersShare } from '../share/othersShare.ts'
import { workOfLines } from '../runs/openPool.ts'
import { replicate, type TracedRun, traceRuns } from '../runs/replicate.ts'
import { onSameThreads } from '../runs/sameThreads.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'

/** What is asked of alternatives. */
export interface AlternativesRequest {
  /** windows of each line, ≥ 2 */
  readonly replications: number
  /** windows in which people are watched, of each line; default 20 */
  readonly watched?: number
  /** the carriers that each station lets go are counted too; default false */
  readonly cycles?: boolean
}

/** What alternatives make, and what their people do; per window. */
export interface AlternativesResult {
  readonly kind: 'alternatives'
  /** output in the same worlds */
  readonly comparison: CompareResult
  /** in the order of the lines; fewer after a stop */
  readonly people: readonly LinePeople[]
  /** stopped before all was done */
  readonly partial: boolean
}

/** What the people of one line do, means over watched windows. */
export interface LinePeople {
  readonly name: string
  /** windows that were watched */
  readonly watched: number
  /** pushes and pulls: named operators, then stations whose own operator pushes or pulls */
  readonly handlings: readonly { readonly operator: string; readonly count: number; readonly seconds: number }[]
  /** carriers that each station lets go, in the order of the stations; empty where nobody asked */
  readonly cycles: readonly number[]
  /** walks of named operators from one place to another */
  readonly walks: readonly { readonly operator: string; readonly count: number; readonly seconds: number }[]
}

const WATCHED = 20
/** walks are told by a trace, which is long */
const TRACED = 5

/**
 * Runs each line in the same worlds, and watches the people of each in the first of them.
 *
 * @param given  2 … 200, with one and the same window
 * @throws RangeError  as `compareLines`
 * @example (await runAlternatives(['now', 'four'].map((name) => ({ name, line: name === 'now' ? line : withCarriers(line, 4), plan: null })), { replications: 2 }, { seed: '1', workers: 0 })).people.map(({ handlings }) => handlings) // => [[], []]
 */
export async function runAlternatives(
  given: readonly LineAsked[],
  { replications, watched = WATCHED, cycles = false }: AlternativesRequest,
  options: StudyOptions,
): Promise<AlternativesResult> {
  const lines = linesAsked(given)
  const watchedRuns = Math.min(watched, replications)
  refuseComparison(lines, { seed: options.seed, replications })
  const work = workOfLines(
    lines.map(({ line }) => line),
    replications + watchedRuns,
  )
  return await onSameThreads(options, work, async (same) => {
    // a share of a study runs its part of everything before it ends
    let others: Error | null = null
    const ofShare = async <T>(run: Promise<T>): Promise<T | null> => {
      try {
        return await run
      } catch (error) {
        if (!isOthersShare(error)) throw error
        others = error
        return null
      }
    }
    const comparison = await ofShare(compareLines(lines, { replications }, same))
    const quiet = withoutProgress(same)
    const people: LinePeople[] = []
    for (const { name, line } of lines) {
      if (options.signal?.aborted === true) break
      const found = await ofShare(watch(name, line, watchedRuns, cycles, quiet))
      if (found !== null) people.push(found)
    }
    if (others !== null) throw others
    return { kind: 'alternatives', comparison: comparison!, people, partial: comparison!.partial || people.length < lines.length }
  })
}

/** The runs that are watched are few, and those of the comparison again. */
function withoutProgress({ onProgress: _, ...rest }: StudyOptions): StudyOptions {
  return rest
}

async function watch(name: string, line: LineSpec, replications: number, cycles: boolean, options: StudyOptions): Promise<LinePeople> {
  const byHand = line.paths.some(({ manual }) => manual !== null)
  const walkers = line.operators.length > 0 && line.walks.length > 0
  const runs = replications > 0 && (byHand || cycles) ? await replicate(line, { replications }, options) : []
  const traced = walkers ? await traceRuns(line, { from: 0, to: Math.min(TRACED, replications) }, options) : []
  const mean = (of: (run: (typeof runs)[number]) => number): number => runs.reduce((sum, run) => sum + of(run), 0) / runs.length
  return {
    name,
    watched: byHand || cycles ? runs.length : replications,
    handlings: (runs[0]?.handlings ?? []).map(({ operator }, index) => ({
      operator,
      count: mean((run) => run.handlings[index]!.count),
      seconds: mean((run) => run.handlings[index]!.seconds),
    })),
    cycles: cycles && runs.length > 0 ? line.stations.map((_, station) => mean((run) => run.stations[station]!.cycles)) : [],
    walks: traced.length === 0 ? [] : walksOf(line, traced),
  }
}

const SENT = TRACE_KINDS.indexOf('operator sent')
const THERE = TRACE_KINDS.indexOf('operator there')

/** A walk begins where an operator is sent and ends where the same is there; those of no length are none. Only what lies in the window counts. */
function walksOf({ operators, window }: LineSpec, traced: readonly TracedRun[]): LinePeople['walks'] {
  return operators.map(({ name: operator }, who) => {
    let count = 0
    let seconds = 0
    for (const { trace } of traced) {
      let since: number | null = null
      for (let at = 0; at < trace.kinds.length; at++) {
        if (trace.details[at] !== who) continue
        if (trace.kinds[at] === SENT) since = trace.seconds[at]!
        else if (trace.kinds[at] === THERE && since !== null) {
          const walked = Math.min(trace.seconds[at]!, window.endSeconds) - Math.max(since, window.warmupSeconds)
          if (walked > 0) {
            count += 1
            seconds += walked
          }
          since = null
        }
      }
    }
    return { operator, count: count / traced.length, seconds: seconds / traced.length }
  })
}
