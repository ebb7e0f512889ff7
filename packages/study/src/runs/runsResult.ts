/** What several runs of one line tell together. Plain data; times in seconds, counts per window. */
import { type ByStationState, type LineSpec, type RunResult, STATION_STATES } from '@loopwright/line'
import { type Law, lawOrNull, workingSeconds, windowSecondsOf } from '@loopwright/line/bounds'
import { type OutputInterval, outputInterval } from '@loopwright/stats'
import { controlledMeans } from '../controls/controlledMeans.ts'
import { runUseOf } from '../controls/runUse.ts'
import { CountStudy } from '../sweep/countStudy.ts'
import { byState } from './byState.ts'
import { ENGINE_VERSION } from './engineVersion.ts'
import { lineHasChance } from './lineChance.ts'
import { rowLayout, runRow } from './runRow.ts'
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

/**
 * Means and intervals over runs.
 *
 * @param spec  the line that was run
 * @param runs  replications 0 … n − 1, in that order
 * @example runsResult(line, await replicate(line, { replications: 3 }, { seed: '1', workers: 0 }), { seed: '1', replications: 3, plan: null }).count.mean.mean // => 121.33333333333333
 */
export function runsResult(
  spec: LineSpec,
  runs: readonly RunResult[],
  request: { seed: string; replications: number; plan: number | null },
): RunsResult {
  const layout = rowLayout(spec)
  const study = new CountStudy(spec.carriers.count, layout, runUseOf(spec, layout))
  study.add(
    0,
    runs.map((run) => runRow(layout, run)),
  )
  const lineLaw = lawOrNull(spec)
  return {
    kind: 'runs',
    engineVersion: ENGINE_VERSION,
    seed: request.seed,
    replications: request.replications,
    chance: lineHasChance(spec),
    partial: runs.length < request.replications,
    plan: request.plan,
    window: spec.window,
    law: lineLaw,
    lawSeconds: (lineLaw?.unitsPerLap ?? 1) * workingSeconds(spec),
    count: study.result(spec, lineLaw, request.plan, controlledMeans(spec, request.seed, [study])[0]),
    intervals: runs.length < 2 ? null : intervals(spec, runs),
  }
}

function intervals(spec: LineSpec, runs: readonly RunResult[]): RunsIntervals {
  const windowSeconds = windowSecondsOf(spec)
  const of = (measure: (run: RunResult) => number): OutputInterval => outputInterval(runs.map(measure))
  const known = (measure: (run: RunResult) => number | null): OutputInterval | null => {
    const values = runs.map(measure).filter((value) => value !== null)
    return values.length < 2 ? null : outputInterval(values)
  }
  return {
    outputPerHour: of((run) => run.outputPerHour),
    lapSeconds: known((run) => run.lap.mean),
    timeInLineSeconds: known((run) => run.timeInLine.mean),
    productsInLine: of((run) => run.productsInLineMean),
    stations: spec.stations.map((station, index) => ({
      name: station.name,
      shares: byState(STATION_STATES, (_, state) => of((run) => run.stations[index]!.seconds[state] / windowSeconds)),
    })),
    zones: spec.zones.map((zone, index) => ({ name: zone.name, occupancy: of((run) => run.zones[index]!.occupancyMean) })),
  }
}
