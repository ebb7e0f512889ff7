/** A follow-up from what was counted and the runs of the forecast: what differs, and the line with it put in. */
import {
  type CountedStop,
  followUp,
  type MeasuredStation,
  type MeasuredWait,
  type RealWeek,
  stationDeviations,
  type StopDeviation,
  stopDeviations,
  waitDeviations,
} from '@loopwright/decide/acceptance'
import type { LineSpec } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import { meetsPlan, type SweepCount } from '@loopwright/study'
import { longerWork, otherStops, type Recalibration, type StopFactors } from '@loopwright/study/trials'
import { stopCauses } from '../study/stopCauses.ts'
import type { FollowUpRuns } from './followUpStory.ts'
import { workSeconds } from './promiseFigures.ts'

/** What was counted and measured after the start; stations by name or title, stops by title. */
export interface CountedReality {
  readonly weeks: readonly RealWeek[]
  /** null: none was measured */
  readonly stations: readonly MeasuredStation[] | null
  /** null: none was counted */
  readonly stops: readonly CountedStop[] | null
  readonly waits: readonly MeasuredWait[]
}

/** How lines are run; the caller knows with how many windows. */
export interface FollowUpStudies {
  /** units of each shift of a line */
  readonly simulate: (line: LineSpec) => Promise<readonly number[]>
  /** the factor on all work that gives so many units a shift */
  readonly recalibrate: (line: LineSpec, units: number) => Promise<Recalibration>
}

/**
 * What differs from the model, and the line with it put in; null: nothing needed that, or no factor was found.
 *
 * @param count  the runs of the forecast
 * @throws RangeError  for stations or stops that the model does not have, or counts that cannot be
 * @example (await followUpOf('loop', scenario, (await sweepCarriers(scenario.line, { counts: [4], replications: 12 }, { seed: '1', workers: 0 })).counts[0], { weeks: [{ name: 'W1', units: 1200, shifts: 10 }], stations: null, stops: null, waits: [] }, '1', { simulate: async () => [], recalibrate: async () => ({ factor: 1, units: 0, found: false }) })).runs.result.state // => 'too few weeks'
 */
export async function followUpOf(
  name: string,
  scenario: Scenario,
  count: SweepCount,
  { weeks, stations: measured, stops: counted, waits: waited }: CountedReality,
  seed: string,
  studies: FollowUpStudies,
): Promise<{ readonly runs: FollowUpRuns; readonly line: LineSpec | null }> {
  const { line, plan } = scenario
  const named = <T extends { readonly station: string }>(one: T): T => ({
    ...one,
    station: line.stations.find((each) => each.name === one.station || each.title === one.station)?.name ?? one.station,
  })
  const work = workSeconds(scenario)
  const model = new Map(line.stations.map((station, index) => [station.name, work[index]!]))
  const result = followUp(weeks, count.units, seed)
  const stations = measured === null ? null : stationDeviations(measured.map(named), model)
  const waits = waitDeviations(
    waited.map(named),
    (station, state) => count.stations.find((each) => each.name === station)?.shares[state] ?? null,
  )
  const causes = stopCauses(
    scenario,
    count.stoppedBy.filter(({ cause }) => cause !== 'break'),
  )
  const stops =
    counted === null
      ? null
      : stopDeviations(
          counted,
          causes.map(({ cause, count: times, seconds }) => ({ stop: cause, count: times, minutes: seconds / 60 })),
        )
  const otherWork = new Map((stations ?? []).filter(({ differs }) => differs).map(({ station, ratio }) => [station, ratio]))
  const otherTimes = stopFactors(stops ?? [], scenario)
  const known = otherWork.size > 0 || otherTimes.size > 0
  const needed = result.state === 'in doubt' || result.state === 'no longer stands' || result.above || known
  const factor = needed && !known ? await studies.recalibrate(line, result.realMean) : null
  const now =
    needed && (factor === null || factor.found)
      ? otherStops(longerWork(line, factor === null ? otherWork : factor.factor), otherTimes)
      : null
  const units = now === null ? null : await studies.simulate(now)
  const planned = plan?.unitsPerWindow ?? null
  const recalibrated = units === null ? null : { units, meetsPlan: meetsPlan(units, planned) }
  return {
    runs: { kind: 'follow-up', name, result, stations, stops, waits, factor, recalibrated, plan: planned, written: null },
    line: now,
  }
}

/** Factors on time between and on repair of the breakdown sources behind the stops that differ. */
function stopFactors(stops: readonly StopDeviation[], { stopEntries }: Pick<Scenario, 'stopEntries'>): ReadonlyMap<string, StopFactors> {
  return new Map(
    stops
      .filter(({ countDiffers, lengthDiffers }) => countDiffers || lengthDiffers)
      .flatMap(({ stop, countDiffers, countRatio, lengthDiffers, lengthRatio }) => {
        // a stop that was never counted keeps its time between: how rare it is, nobody knows yet
        const between = countDiffers && countRatio !== null && countRatio > 0 ? 1 / countRatio : 1
        const repair = lengthDiffers && lengthRatio !== null ? lengthRatio : 1
        const sources = stopEntries.filter(({ title }) => title === stop).flatMap((entry) => entry.sources)
        return sources.map(({ source }) => [source, { between, repair }] as const)
      }),
  )
}
