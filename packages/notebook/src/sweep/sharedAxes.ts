/** Axes that every count of a sweep shares, so that a switch of the count moves the marks and nothing else. */
import { breaksWithin, type OutputByHourOptions, type StoppedTimeOptions, type UnitsSpreadOptions } from '@loopwright/charts'
import type { Scenario, ShiftStart } from '@loopwright/scenario'
import type { SweepCount } from '@loopwright/study'
import { stopCauses } from '../study/stopCauses.ts'
import { clockText } from '../words/clockWords.ts'

export interface SharedAxes {
  readonly hours: Pick<OutputByHourOptions, 'unitsMax' | 'breaks' | 'startClock'>
  readonly spread: Pick<UnitsSpreadOptions, 'unitsSpan'>
  readonly stops: Pick<StoppedTimeOptions, 'secondsMax'>
}

/**
 * @param counts  all that can be chosen, each with a replication
 * @param starts  of the run's shifts; empty: there is no calendar, and hours are counted
 * @example Object.keys(sharedAxes(scenario, (await sweepCarriers(scenario.line, { counts: [4], replications: 2 }, { seed: '1', workers: 0 })).counts, [])) // => ['hours', 'spread', 'stops']
 */
export function sharedAxes(scenario: Scenario, counts: readonly SweepCount[], starts: readonly ShiftStart[]): SharedAxes {
  const { breaks, window } = scenario.line
  const units = counts.flatMap((count) => count.units)
  const clock = clockText(starts, window.warmupSeconds)
  const stops = counts.flatMap(({ stoppedBy }) => stopCauses(scenario, stoppedBy)).filter(({ cause }) => cause !== 'break')
  return {
    hours: {
      unitsMax: greatest(counts.flatMap(({ outputByHour, hourSpread }) => [...outputByHour, ...hourSpread.map(({ p90 }) => p90)])),
      breaks: breaksWithin(breaks, window),
      ...(clock === null ? {} : { startClock: clock.slice(0, 5) }),
    },
    spread: { unitsSpan: [units.reduce((least, made) => Math.min(least, made), Number.POSITIVE_INFINITY), greatest(units)] },
    stops: { secondsMax: greatest(stops.map(({ seconds }) => seconds)) },
  }
}

const greatest = (values: readonly number[]): number => values.reduce((most, value) => Math.max(most, value), 0)
