/** What a station does with a carrier, and all its tasks. (MODEL.md §5) */
import type { StationSpec, TaskSpec } from './spec.ts'

/** What a station may do with a carrier, in the order in which it does so. */
export const DUTIES = ['unload', 'load', 'work'] as const

/**
 * All tasks of a station, duty by duty; one that stands under several duties stands here as often.
 *
 * @example tasksOf(line.stations[1]).map(({ task }) => line.tasks[task]) // => ['fit']
 */
export function tasksOf(station: Pick<StationSpec, (typeof DUTIES)[number]>): TaskSpec[] {
  return DUTIES.flatMap((duty) => station[duty] ?? [])
}
