/** Whether the law holds exactly, or why it is only an estimate. (MODEL.md §12) */
import type { Distribution } from '@loopwright/stats'
import type { LineSpec } from '../spec.ts'
import { tasksOf } from '../stationTasks.ts'
import type { DutyLaps } from './dutyLaps.ts'

const ESTIMATE_REASONS = [
  'ramps',
  'random times',
  'exit-clear transfers',
  'breakdowns',
  'breaks',
  'products with different times',
  'a product list that runs out',
] as const
/** What keeps the law from being exact. */
export type EstimateReason = (typeof ESTIMATE_REASONS)[number]

/**
 * Why the three terms are an estimate; empty: they hold exactly.
 *
 * @param laps  of a lone carrier, one per variant that is made
 */
export function estimateReasons(spec: LineSpec, laps: readonly DutyLaps[]): readonly EstimateReason[] {
  const tasks = spec.stations.flatMap(tasksOf)
  const times = [
    ...tasks.flatMap((task) => task.seconds),
    ...spec.stations.map((station) => station.releaseSeconds),
    ...spec.paths.flatMap((path) => [path.moveSeconds, path.clearSeconds]),
  ]
  const derived = spec.paths.filter((path) => path.moveSeconds === null || path.clearSeconds === null)
  const met: Record<EstimateReason, boolean> = {
    ramps: derived.some((path) => path.accelerationMetresPerSecondSquared !== null),
    'random times': times.some((time) => time !== null && time !== 'move' && !isConstant(time)),
    'exit-clear transfers': spec.zones.some((zone) => zone.transfer?.enterOnlyIfExitClear === true),
    breakdowns: spec.breakdowns.length > 0,
    breaks: spec.breaks.length > 0,
    'products with different times': laps.some((lap) => lap.laps > 1 || !sameVisits(lap, laps[0]!)),
    'a product list that runs out': spec.mix.kind === 'list',
  }
  return ESTIMATE_REASONS.filter((reason) => met[reason])
}

const isConstant = (time: Distribution): boolean => time.kind === 'constant'

const sameVisits = (a: DutyLaps, b: DutyLaps): boolean =>
  a.visits.length === b.visits.length &&
  a.visits.every((visit, index) => {
    const other = b.visits[index]!
    return visit.duty === other.duty && visit.workSeconds === other.workSeconds && visit.releaseSeconds === other.releaseSeconds
  })
