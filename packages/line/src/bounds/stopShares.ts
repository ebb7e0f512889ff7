/** What stops take of the time of a station, by their clocks. (MODEL.md §7) */
import { distributionMean, hasAtoms } from '@loopwright/stats'
import type { BreakdownSpec, LineSpec } from '../spec.ts'

export interface StopShares {
  /** repair seconds per second of work, of sources of the station on the operating clock */
  readonly perWork: number
  /** the same per second of moving in or out, of sources of its zone */
  readonly perMove: number
  /** the same per second of position change, of sources of its transfer */
  readonly perChange: number
  /** sources by the clock, of the station, its zone or its section */
  readonly byClock: readonly BreakdownSpec[]
  /** sources of its section on the operating clock */
  readonly bySection: readonly BreakdownSpec[]
  /** a failure and the end of what it strikes may fall on one instant: a repair then takes nothing that the move out would not have taken */
  readonly mayTie: boolean
  /** mean seconds that a move in is held by somebody in the way */
  readonly safetySeconds: number
}

/**
 * The share of time that is left by sources that stop alone: time to failure over that and the repair.
 *
 * @example availability({ timeToFailureSeconds: { kind: 'exponential', mean: 900 }, repairSeconds: { kind: 'constant', value: 100 } }) // => 0.9
 */
export function availability({ timeToFailureSeconds, repairSeconds }: BreakdownSpec): number {
  const up = distributionMean(timeToFailureSeconds)
  const down = distributionMean(repairSeconds)
  return up + down > 0 ? up / (up + down) : 1
}

/** Repair seconds per second of the clock; 0 where a clock of 0 s says nothing. */
export function repairRatio({ timeToFailureSeconds, repairSeconds }: BreakdownSpec): number {
  const up = distributionMean(timeToFailureSeconds)
  return up > 0 ? distributionMean(repairSeconds) / up : 0
}

export function stopShares(spec: LineSpec, station: number): StopShares {
  const { zone, safetyStop } = spec.stations[station]!
  const at = (kind: 'station' | 'zone' | 'transfer'): BreakdownSpec[] =>
    spec.breakdowns.filter(({ part }) => part.kind === kind && part.index === (kind === 'station' ? station : zone))
  const section = spec.breakdowns.filter(({ part }) => part.kind === 'section' && spec.sections[part.index]!.zones.includes(zone))
  const own = [...at('station'), ...at('zone'), ...at('transfer')]
  const operating = (sources: readonly BreakdownSpec[]): BreakdownSpec[] => sources.filter(({ clock }) => clock === 'operating')
  const sum = (sources: readonly BreakdownSpec[]): number => operating(sources).reduce((total, source) => total + repairRatio(source), 0)
  return {
    perWork: sum(at('station')),
    perMove: sum(at('zone')),
    perChange: sum(at('transfer')),
    byClock: [...own, ...section].filter(({ clock }) => clock === 'calendar'),
    bySection: operating(section),
    mayTie: operating(own).some(({ timeToFailureSeconds }) => hasAtoms(timeToFailureSeconds)),
    safetySeconds: safetyStop === null ? 0 : safetyStop.probability * distributionMean(safetyStop.resetSeconds),
  }
}
