/** The carrier sweep: how much the line makes with each number of carriers, all in the same random worlds. */
import { completeLine, type GivenLine, type LineSpec } from '@loopwright/line'
import { lawOrNull } from '@loopwright/line/bounds'
import { checkPlan, checkReplications } from '../runs/asked.ts'
import { expectedEvents } from '../runs/expectedEvents.ts'
import { lineHasChance } from '../runs/lineChance.ts'
import { openPool, workOf } from '../runs/openPool.ts'
import type { StudyOptions, StudyProgress } from '../runs/studyOptions.ts'
import { type FirstAnswer, firstAnswer, firstRuns, leadingCount, type Studies } from './firstAnswer.ts'
import { missing, type Part, runParts } from './runParts.ts'
import { pilotBest, sweepAnswer, WITHIN } from './sweepAnswer.ts'
import { Counts, checkedCounts, PILOT_REPLICATIONS, pilotSeed, sweepResult } from './sweepAssembly.ts'
import type { SweepResult } from './sweepResult.ts'

/** What a sweep is asked. */
export interface SweepRequest {
  /** numbers of carriers to try */
  readonly counts: readonly number[]
  /** per count, ≥ 1 */
  readonly replications: number
  /** units wanted per window; default null: no plan */
  readonly plan?: number | null
}

/** How a sweep is carried out. */
export interface SweepOptions extends StudyOptions<SweepProgress> {
  /** told once what the first 10 runs of each count say, as soon as they are in; not where a sweep has fewer */
  readonly onFirst?: (first: FirstAnswer) => void
}

/** How far a sweep has come. */
export interface SweepProgress extends StudyProgress {
  /** the count with the highest mean output so far, pilot and judged runs together; null while a count has no run */
  readonly leading: number | null
}

/**
 * Simulates each number of carriers `replications` times, and answers by Procedure W: pilot runs in worlds of their own choose the
 * reference, and these runs are walked down from it (see `sweepAnswer`). How many replications are enough is the caller's to say; `chooseCarriers` finds out.
 *
 * Replication k of each count meets the same random world. The result is the same, to the last bit, for any number of workers.
 *
 * @param given  the line; its own number of carriers does not enter
 * @throws RangeError  if the line cannot take one of the counts; any error that a run throws
 * @example (await sweepCarriers(line, { counts: [2, 3, 4], replications: 10 }, { seed: '1', workers: 0 })).answer.chosen // => 3
 */
export async function sweepCarriers(given: GivenLine, request: SweepRequest, options: SweepOptions): Promise<SweepResult> {
  const spec = completeLine(given)
  const { seed, signal, onProgress, onFirst } = options
  const sweep = sweepParts(spec, request, seed)
  const total = missing(sweep.parts)
  const { pool, close } = openPool(
    options,
    workOf(
      spec,
      sweep.parts.map(({ study, replications }) => ({ carriers: study.carriers, replications })),
    ),
  )
  let done = 0
  let first: FirstAnswer | null = null
  try {
    await runParts(pool, spec, sweep.parts, {
      signal,
      ...(sweep.isShort ? { openers: Math.ceil(pool.size / 2) } : {}),
      onRows: (came) => {
        done += came
        if (first === null && onFirst !== undefined) {
          first = sweep.first()
          if (first !== null) onFirst(first)
        }
        onProgress?.({
          done,
          total,
          settled: true,
          recalled: pool.recalled,
          precision: sweep.judged.precision(),
          leading: leadingCount(sweep.counts),
        })
      },
    })
  } finally {
    await close()
  }
  return sweep.result(signal?.aborted === true)
}

interface SweepParts {
  readonly parts: readonly Part[]
  /** whether half of the threads open it */
  readonly isShort: boolean
  readonly judged: Counts
  /** of each count the pilot, where there is one, and the judged study */
  readonly counts: readonly Studies[]
  /** null while it cannot be told */
  readonly first: () => FirstAnswer | null
  readonly result: (stopped: boolean) => SweepResult
}

/** pilot runs for each judged one: the pilot decides where the walk begins */
const PILOT_PACE = 3

/** Pilot and judged runs side by side: what is there when the sweep is stopped goes together. One count alone needs no pilot. */
function sweepParts(spec: LineSpec, request: SweepRequest, seed: string): SweepParts {
  checkReplications(request.replications)
  const { plan = null } = request
  checkPlan(plan)
  const chance = lineHasChance(spec)
  const replications = chance ? request.replications : 1
  const counts = checkedCounts(spec, request.counts)
  const pilot = new Counts(spec, pilotSeed(seed))
  const judged = new Counts(spec, seed)
  const piloted = counts.length === 1 ? [] : counts.map((carriers) => pilot.of(carriers))
  const pilots = Math.min(PILOT_REPLICATIONS, replications)
  const wanted = piloted.length === 0 ? [replications] : [pilots, replications]
  const opening = openingOf(spec, counts, firstRuns(wanted))
  const parts = [
    ...counts.map((carriers) => ({ seed, study: judged.of(carriers), replications, opening: opening.runs.at(-1)! })),
    ...piloted.map((study) => ({ seed: pilot.seed, study, replications: pilots, pace: PILOT_PACE, opening: opening.runs[0]! })),
  ]
  const studies = counts.map((carriers, place) => [...piloted.slice(place, place + 1), judged.of(carriers)])
  return {
    parts,
    isShort: opening.isShort,
    judged,
    counts: studies,
    first: () => firstAnswer(studies, wanted, WITHIN),
    result: (stopped) =>
      sweepResult(spec, judged.all(), { seed, replications, plan, stopped }, (told) => {
        if (told.length === 1) return sweepAnswer(told, told[0]!.carriers, { certain: !chance })
        return piloted.some((study) => study.units.length === 0) ? null : sweepAnswer(told, pilotBest(piloted), { certain: !chance })
      }),
  }
}

/**
 * Events up to which the first runs of a count are one task: a thread then has one line at a time before it, which compiled code follows sooner. A tenth of a
 * second at most, so that a sweep that is stopped early still has something of each count.
 */
const OPENING_EVENTS = 1_000_000

/**
 * Events up to which half of the threads open a sweep, and the rest follow: some tenths of a second. Each thread compiles the engine for itself, which takes as
 * much of a core as so many events, and the cores of those that wait do it for those that run.
 */
const HALF_EVENTS = 10_000_000

interface Opening {
  /** runs of the first task of a count, by study */
  readonly runs: readonly number[]
  /** so few events in all that half of the threads are enough */
  readonly isShort: boolean
}

function openingOf(spec: LineSpec, counts: readonly number[], first: readonly number[]): Opening {
  const runs = first.reduce((sum, of) => sum + of, 0)
  const law = lawOrNull(spec)
  const events = counts.map((carriers) => runs * expectedEvents(spec, law, carriers))
  const inOne = Math.max(...events) <= OPENING_EVENTS
  return {
    runs: first.map((of) => (inOne ? Math.max(1, of) : 1)),
    isShort: inOne && events.reduce((sum, of) => sum + of, 0) <= HALF_EVENTS,
  }
}
