/** Stations at which nothing is left to do: every product has had their tasks before. (MODEL.md §5) */
import { mixShares } from '../bounds/law.ts'
import { productWalk } from '../bounds/productWalk.ts'
import type { LineSpec } from '../spec.ts'
import { tasksOf } from '../stationTasks.ts'
import { at, type Finding, found } from './finding.ts'
import { productZones } from './reach.ts'
import { sentences as say } from './sentences.ts'

/**
 * Stations of work alone that products come to, all of whose tasks stand at other stations too, which every product meets first.
 *
 * @returns  none where there is more to the line than can be looked at
 * @example checkLeftToDo(line) // => []
 */
export function checkLeftToDo(line: LineSpec): Finding[] {
  const made = mixShares(line.mix, line.variants.length)
  const havers = new Map<number, Set<number>>()
  for (const [index, station] of line.stations.entries())
    for (const { task } of tasksOf(station)) havers.set(task, (havers.get(task) ?? new Set()).add(index))
  const shared = line.stations.flatMap((station, index) => {
    if (station.load !== null || station.unload !== null) return []
    const tasks = new Set(
      tasksOf(station).flatMap(({ task, seconds }) => (seconds.some((each, v) => each != null && made[v]! > 0) ? [task] : [])),
    )
    return tasks.size > 0 && [...tasks].every((task) => havers.get(task)!.size > 1) ? [{ index, tasks: [...tasks] }] : []
  })
  if (shared.length === 0) return []
  const reached = productZones(line)
  const doubtful = shared.filter(({ index }) => reached.has(line.stations[index]!.zone))
  const busy = new Set<number>()
  for (const [variant, share] of made.entries()) {
    if (!(share > 0)) continue
    const walk = productWalk(line, variant)
    if (walk === null || walk.starts.length === 0) return []
    for (const { stay } of walk.nodes) if (stay !== null) busy.add(stay.station)
  }
  return doubtful.flatMap(({ index, tasks }) => {
    if (busy.has(index)) return []
    const first = [...new Set(tasks.flatMap((task) => [...havers.get(task)!]))]
      .filter((place) => busy.has(place))
      .toSorted((one, other) => one - other)
    const nameOf = (place: number): string => line.stations[place]!.name
    return [
      found(
        at('station', index),
        say.nothingLeft(
          nameOf(index),
          tasks.map((task) => line.tasks[task]!),
          first.map(nameOf),
        ),
      ),
    ]
  })
}
