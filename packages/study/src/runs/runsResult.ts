/** What several runs of one line tell together. Plain data; times in seconds, counts per window. */
import {
  type ByStationState,
  completeLine,
  type GivenLine,
  type LineSpec,
  type RunResult,
  STATION_STATES,
  ZONE_STATES,
} from '@loopwright/line'
import { type Law, lawOrNull, workingSeconds, windowSecondsOf } from '@loopwright/line/bounds'
import { type OutputInterval, outputInterval } from '@loopwright/stats'
import { checkPlan, checkReplications } from './asked.ts'
import { controlledMeans } from '../controls/controlledMeans.ts'
import { runUseOf } from '../controls/runUse.ts'
import { CountStudy } from '../sweep/countStudy.ts'
import { byState } from './byState.ts'
import { ENGINE_VERSION } from './engineVersion.ts'
import { lineHasChance } from './lineChance.ts'
import { openPool, workOf } from './openPool.ts'
import { runChunks } from './runChunks.ts'
import { type RowLayout, rowLayout, runRow, stationColumn } from './runRow.ts'
import { Schedule } from './schedule.ts'
import type { StudyOptions } from './studyOptions.ts'
import type { SweepCount } from '../sweep/sweepResult.ts'

/** What several runs of one line tell together; seconds, units per window. */
export interface RunsResult {
  readonly kind: 'runs'
  readonly engineVersion: string
  readonly seed: string
  /** asked for */
  readonly replications: number
  /** false: nothing in the line is left to chance, and every run is the same */
  readonly chance: boolean
  /** stopped before all were done; replications 0 … n − 1 are in */
  readonly partial: boolean
  /** units wanted per window; null without a plan */
  readonly plan: number | null
  readonly window: { readonly warmupSeconds: number; readonly endSeconds: number }
  /** null: the line is no single closed loop */
  readonly law: Law | null
  /** units per window = rate of the law × this */
  readonly lawSeconds: number
  /** means over the runs, as in a sweep of this one count */
  readonly count: SweepCount
  /** 95 % intervals of the means; null below 2 runs */
  readonly intervals: RunsIntervals | null
}

/** Means over the runs, each with its 95 % interval. */
export interface RunsIntervals {
  readonly outputPerHour: OutputInterval
  /** of the runs that have one; null where fewer than 2 have */
  readonly lapSeconds: OutputInterval | null
  readonly timeInLineSeconds: OutputInterval | null
  readonly productsInLine: OutputInterval
  /** per station, share of the window in each state */
  readonly stations: readonly { readonly name: string; readonly shares: ByStationState<OutputInterval> }[]
  readonly zones: readonly { readonly name: string; readonly occupancy: OutputInterval }[]
}

/** What of the request its result repeats. */
interface Asked {
  readonly seed: string
  readonly replications: number
  readonly plan: number | null
}

/**
 * Means and intervals over runs.
 *
 * @param given  the line that was run
 * @param runs  replications 0 … n − 1, in that order
 * @example runsResult(line, await replicate(line, { replications: 3 }, { seed: '1', workers: 0 }), { seed: '1', replications: 3, plan: null }).count.mean.mean // => 121.33333333333333
 */
export function runsResult(given: GivenLine, runs: readonly RunResult[], request: Asked): RunsResult {
  const spec = completeLine(given)
  const told = new RunsTold(spec, runs.length)
  told.add(
    0,
    runs.map((run) => runRow(told.layout, run)),
  )
  return told.result(request, false)
}

/** bytes; more would not leave room for anything else */
const MEMORY_MAX = 2 ** 31

/**
 * Runs a line several times, and tells means and intervals: the same as `runsResult` of `replicate`, without keeping what each run tells.
 *
 * @param request  how many replications, ≥ 1, and the plan
 * @returns        the same for any number of workers; after a stop plain means of replications 0 … n − 1
 * @throws RangeError   if so many replications of this line need more memory than there is for them
 * @example (await runMany(line, { replications: 3, plan: null }, { seed: '1', workers: 0 })).count.mean.mean // => 121.33333333333333
 */
export async function runMany(given: GivenLine, request: Omit<Asked, 'seed'>, options: StudyOptions): Promise<RunsResult> {
  const spec = completeLine(given)
  const { replications } = request
  checkReplications(replications)
  checkPlan(request.plan)
  const { seed, signal, onProgress } = options
  const bytes = RunsTold.bytesOf(spec)
  if (replications * bytes > MEMORY_MAX)
    throw new RangeError(
      `${replications} replications of this line are more than the memory holds: ask for at most ${Math.floor(MEMORY_MAX / bytes)}`,
    )
  const told = new RunsTold(spec, replications)
  const schedule = new Schedule(1, replications)
  const { pool, close } = openPool(options, workOf(spec, [{ carriers: spec.carriers.count, replications }]))
  let done = 0
  try {
    const line = pool.line(spec)
    await runChunks(pool, {
      schedule,
      taskOf: ({ from, to }) => ({ line, carriers: spec.carriers.count, seed, from, to, want: 'rows' }),
      onResult: ({ from, to }, { rows }) => {
        told.add(from, rows)
        schedule.learn(0, rows.at(-1)![told.layout.events]!)
        done += to - from
        onProgress?.({ done, total: replications, settled: true, recalled: pool.recalled, precision: null })
      },
      signal,
    })
  } finally {
    await close()
  }
  return told.result({ ...request, seed }, signal?.aborted === true)
}

/** Replications while they come in: of each only the numbers that its intervals are made of. */
class RunsTold {
  readonly layout: RowLayout
  readonly #spec: LineSpec
  readonly #study: CountStudy
  /** columns of the row that have an interval */
  readonly #places: readonly number[]
  /** by replication: these columns */
  readonly #numbers: Float64Array

  constructor(spec: LineSpec, replications: number) {
    this.#spec = spec
    this.layout = rowLayout(spec)
    this.#study = new CountStudy(spec.carriers.count, this.layout, runUseOf(spec, this.layout))
    this.#places = placesOf(spec, this.layout)
    this.#numbers = new Float64Array(this.#places.length * replications)
  }

  /** About so many for each replication: its numbers, and what it used of its streams. */
  static bytesOf(spec: LineSpec): number {
    return 8 * placesOf(spec, rowLayout(spec)).length + 16 * (spec.breakdowns.length + spec.stations.length) + 250
  }

  add(from: number, rows: readonly Float64Array[]): void {
    this.#study.add(from, rows)
    const width = this.#places.length
    for (const [index, row] of rows.entries())
      for (const [k, place] of this.#places.entries()) this.#numbers[(from + index) * width + k] = row[place]!
  }

  /** @param stopped  it ends within a second then, and tells plain means */
  result(request: Asked, stopped: boolean): RunsResult {
    const spec = this.#spec
    const study = this.#study
    const lineLaw = lawOrNull(spec)
    const controlled = stopped ? undefined : controlledMeans(spec, request.seed, [study])[0]
    return {
      kind: 'runs',
      engineVersion: ENGINE_VERSION,
      seed: request.seed,
      replications: request.replications,
      chance: lineHasChance(spec),
      partial: study.tally.taken < request.replications,
      plan: request.plan,
      window: spec.window,
      law: lineLaw,
      lawSeconds: (lineLaw?.unitsPerLap ?? 1) * workingSeconds(spec),
      count: study.result(spec, lineLaw, request.plan, controlled),
      intervals: study.tally.taken < 2 ? null : this.#intervals(study.tally.taken),
    }
  }

  #intervals(replications: number): RunsIntervals {
    const { layout } = this
    const windowSeconds = windowSecondsOf(this.#spec)
    const width = this.#places.length
    const column = new Map(this.#places.map((place, k) => [place, k]))
    const of = (place: number, over = 1): OutputInterval => outputInterval(valuesOf(place).map((value) => value / over))
    const valuesOf = (place: number): number[] =>
      Array.from({ length: replications }, (_, replication) => this.#numbers[replication * width + column.get(place)!]!)
    const known = (place: number): OutputInterval | null => {
      const values = valuesOf(place).filter((value) => !Number.isNaN(value))
      return values.length < 2 ? null : outputInterval(values)
    }
    return {
      outputPerHour: of(layout.outputPerHour),
      lapSeconds: known(layout.lapSeconds),
      timeInLineSeconds: known(layout.timeInLineSeconds),
      productsInLine: of(layout.productsInLine),
      stations: this.#spec.stations.map((station, index) => ({
        name: station.name,
        shares: byState(STATION_STATES, (_, state) => of(stationColumn(layout, index, state), windowSeconds)),
      })),
      zones: this.#spec.zones.map((zone, index) => ({ name: zone.name, occupancy: of(occupancyColumn(layout, index)) })),
    }
  }
}

/** Columns of the row that have an interval. */
function placesOf(spec: LineSpec, layout: RowLayout): number[] {
  return [
    layout.outputPerHour,
    layout.lapSeconds,
    layout.timeInLineSeconds,
    layout.productsInLine,
    ...spec.stations.flatMap((_, station) => STATION_STATES.map((state) => stationColumn(layout, station, state))),
    ...spec.zones.map((_, zone) => occupancyColumn(layout, zone)),
  ]
}

const occupancyColumn = (layout: RowLayout, zone: number): number => layout.zone + zone * layout.zoneStride + ZONE_STATES.length
