import { completeLine, type GivenLine } from '@loopwright/line'
import { mixShares, taskMean } from '@loopwright/line/bounds'
import type { TaskToShare } from './taskBalance.ts'

/**
 * The work of all stations as tasks to share: means over the mix, in the order of flow from the load station on, each after the one before it.
 *
 * @returns  tasks of the duty `work`; loading and unloading stay where they are
 * @example lineTasks(line) // => [{ name: 'fit', seconds: 20, after: [] }]
 */
export function lineTasks(given: GivenLine): TaskToShare[] {
  const line = completeLine(given)
  const variantShares = mixShares(line.mix, line.variants.length)
  const load = line.stations.find((station) => station.load !== null)?.zone ?? 0
  const fromLoad = (zone: number): number => (zone - load + line.zones.length) % line.zones.length
  const tasks = [...line.stations]
    .sort((a, b) => fromLoad(a.zone) - fromLoad(b.zone))
    .flatMap(({ work }) => work ?? [])
    .map((task) => ({ name: line.tasks[task.task]!, seconds: taskMean(task, variantShares) }))
  return tasks.map((task, index) => ({ ...task, after: index === 0 ? [] : [tasks[index - 1]!.name] }))
}
