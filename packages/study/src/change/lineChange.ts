/** A line with one thing changed: the pieces that drivers and losses are made of. Every function gives a new line. */
import {
  type BreakdownSpec,
  DUTIES,
  type LineSpec,
  type PathSpec,
  type StationSpec,
  type SupplySpec,
  type TaskSpec,
  tasksOf,
} from '@loopwright/line'
import { taskMean } from '@loopwright/line/bounds'
import type { Distribution } from '@loopwright/stats'

/**
 * Mean seconds of all tasks of a station over the mix; a variant without work counts 0 s.
 *
 * @param shares  by variant, summing to 1
 * @example meanTaskSeconds(line.stations[1], [1]) // => 20
 */
export function meanTaskSeconds(station: Pick<StationSpec, (typeof DUTIES)[number]>, shares: readonly number[]): number {
  return tasksOf(station).reduce((sum, task) => sum + taskMean(task, shares), 0)
}

/** Changes the times of tasks; the place in `seconds` is the variant's. */
export function withTaskTimes(
  line: LineSpec,
  change: (
    times: Distribution | null,
    where: { readonly station: number; readonly task: number; readonly variant: number },
  ) => Distribution | null,
): LineSpec {
  const changedTask = (station: number, task: TaskSpec): TaskSpec => ({
    ...task,
    seconds: task.seconds.map((times, variant) => change(times, { station, task: task.task, variant })),
  })
  const stations = line.stations.map((station, index): StationSpec => {
    const duties = DUTIES.map((duty) => [duty, station[duty]?.map((task) => changedTask(index, task)) ?? null] as const)
    return { ...station, ...Object.fromEntries(duties) }
  })
  return { ...line, stations }
}

/** Changes stations. */
export function withStations(line: LineSpec, change: (station: StationSpec, index: number) => StationSpec): LineSpec {
  return { ...line, stations: line.stations.map(change) }
}

/** Changes the supplies, the line's and those of single stations. */
export function withSupplies(line: LineSpec, change: (supply: SupplySpec) => SupplySpec): LineSpec {
  return {
    ...withStations(line, (station) => ({ ...station, supply: station.supply === null ? null : change(station.supply) })),
    supply: change(line.supply),
  }
}

/** Changes paths. */
export function withPaths(line: LineSpec, change: (path: PathSpec, index: number) => PathSpec): LineSpec {
  return { ...line, paths: line.paths.map(change) }
}

/** Changes breakdown sources. */
export function withBreakdowns(line: LineSpec, change: (source: BreakdownSpec) => BreakdownSpec): LineSpec {
  return { ...line, breakdowns: line.breakdowns.map(change) }
}

/** Places of tasks in the line, in the order of stations: each task of each station once. */
export function taskPlaces(line: LineSpec): { readonly station: number; readonly task: number; readonly several: boolean }[] {
  return line.stations.flatMap((each, station) => {
    const tasks = [...new Set(tasksOf(each).map(({ task }) => task))]
    return tasks.map((task) => ({ station, task, several: tasks.length > 1 }))
  })
}

/** All times of one task at one station. */
export function timesOf(line: LineSpec, station: number, task: number): (Distribution | null)[] {
  return tasksOf(line.stations[station]!)
    .filter((each) => each.task === task)
    .flatMap(({ seconds }) => seconds)
}
