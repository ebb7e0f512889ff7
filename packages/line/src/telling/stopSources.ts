/** What may stop a part of a line, in the order in which runs count it and traces number it. (MODEL.md §11) */
import type { BreakdownSpec, LineSpec } from '../spec.ts'
import type { BreakdownResult, RunResult } from './result.ts'

/** A source of breakdowns, or the safety stop of a station. The name is what stopped time is told by. */
export type StopSource =
  | { readonly kind: 'breakdown'; readonly name: string; readonly breakdown: BreakdownSpec }
  | { readonly kind: 'safety stop'; readonly name: string; readonly station: number }

/**
 * Sources of breakdowns in their order, then safety stops by station. Breaks stand behind them where causes are counted, and have no number.
 *
 * @example stopSources(line).map(({ name }) => name) // => ['jam']
 */
export function stopSources({ breakdowns, stations }: Pick<LineSpec, 'breakdowns' | 'stations'>): StopSource[] {
  return [
    ...breakdowns.map((breakdown): StopSource => ({ kind: 'breakdown', name: breakdown.name, breakdown })),
    ...stations.flatMap(({ name, safetyStop }, station): StopSource[] =>
      safetyStop === null ? [] : [{ kind: 'safety stop', name: safetyCause(name), station }],
    ),
  ]
}

/**
 * What a run tells of each, in the same order and by the same names, then of the breaks.
 *
 * @example stopsOf({ breakdowns: [], safetyStops: [{ name: 'S3', count: 2, seconds: 60 }], breaks: { count: 0, seconds: 0 } })[0].name // => 'safety stop S3'
 */
export function stopsOf({ breakdowns, safetyStops, breaks }: Pick<RunResult, 'breakdowns' | 'safetyStops' | 'breaks'>): BreakdownResult[] {
  return [...breakdowns, ...safetyStops.map((stop) => ({ ...stop, name: safetyCause(stop.name) })), { name: 'break', ...breaks }]
}

/** What the safety stop of a station is called as a cause of stopped time. */
export const safetyCause = (station: string): string => `safety stop ${station}`
