import { notAboveZero, notACount } from '../messages.ts'
import { StatisticsError } from '../statisticsError.ts'
import { predecessorBits, type Tasks } from './precedence.ts'

/** Tasks by station, and the cycle that they keep. */
export interface Balance {
  readonly cycle: number
  readonly stations: number
  /** tasks by station, from 0, in a possible order; one of the optimal groupings */
  readonly groups: readonly (readonly number[])[]
}

const SETS_MAX = 2_000_000

/**
 * The fewest stations that can do the tasks within a cycle, exactly; of average times only: scatter, carriers and exchange times decide the rest.
 *
 * Dynamic programming over the sets of tasks that can be done first; value (stations, load of the open one), least first.
 *
 * @param cycle    in the unit of the times
 * @param setsMax  largest number of sets looked at; 2,000,000
 * @throws StatisticsError E_BALANCE for a task longer than the cycle or a circle; E_TOO_LARGE above 25 tasks or setsMax sets
 * @see Jackson, A computing procedure for a line balancing problem (1956): the instance used in the tests
 * @example fewestStations({ times: [4, 3, 3], arcs: [[0, 1]] }, 6).stations // => 2
 */
export function fewestStations(tasks: Tasks, cycle: number, setsMax: number = SETS_MAX): Balance {
  const before = predecessorBits(tasks)
  const { times } = tasks
  if (!(cycle > 0)) throw notAboveZero('The cycle', cycle)
  const long = times.findIndex((time) => time > cycle)
  if (long >= 0) {
    throw new StatisticsError(
      'E_BALANCE',
      `Task ${long + 1} takes ${times[long]}, longer than the cycle of ${cycle}: split it, or take a longer cycle.`,
    )
  }
  const n = times.length
  const last = lastTasks(times, before, Math.floor(cycle), setsMax)
  const order: number[] = []
  for (let set = (1 << n) - 1; set !== 0; set &= ~(1 << order[0]!)) order.unshift(last.get(set)!)
  const groups: number[][] = []
  let load = Infinity
  for (const task of order) {
    if (load + times[task]! > cycle) {
      groups.push([])
      load = 0
    }
    groups.at(-1)!.push(task)
    load += times[task]!
  }
  return { cycle, stations: groups.length, groups }
}

/** For each set that can be done first, its last task on a best way to it. */
function lastTasks(times: readonly number[], before: Int32Array, wholeCycle: number, setsMax: number): Map<number, number> {
  const n = times.length
  const last = new Map<number, number>()
  // value of a set: stations and the load of the open one, as one number to compare
  const scale = wholeCycle + 1
  let level = new Map<number, number>([[0, wholeCycle]])
  for (let size = 0; size < n; size++) {
    const next = new Map<number, number>()
    for (const [set, value] of level) {
      const load = value % scale
      for (let task = 0; task < n; task++) {
        if ((set & (1 << task)) !== 0 || (before[task]! & ~set) !== 0) continue
        const time = times[task]!
        const grown = load + time <= wholeCycle ? value + time : value - load + scale + time
        const bigger = set | (1 << task)
        if ((next.get(bigger) ?? Infinity) <= grown) continue
        next.set(bigger, grown)
        last.set(bigger, task)
      }
      if (last.size > setsMax) throw tooManySets(setsMax)
    }
    level = next
  }
  return last
}

const tooManySets = (setsMax: number): StatisticsError =>
  new StatisticsError(
    'E_TOO_LARGE',
    `There are more than ${setsMax} sets of tasks: too large for an exact answer; group tasks or add precedences.`,
  )

/**
 * The smallest cycle for a number of stations, exactly.
 *
 * @param stations  whole number from 1
 * @throws StatisticsError as fewestStations
 * @example smallestCycle({ times: [4, 3, 3], arcs: [[0, 1]] }, 2).cycle // => 6
 */
export function smallestCycle(tasks: Tasks, stations: number): Balance {
  if (!(Number.isInteger(stations) && stations >= 1)) throw notACount('The number of stations', stations, 1)
  predecessorBits(tasks)
  const sum = tasks.times.reduce((all, time) => all + time, 0)
  let low = Math.max(Math.max(...tasks.times), Math.ceil(sum / stations))
  let best = fewestStations(tasks, sum)
  while (low < best.cycle) {
    const middle = Math.floor((low + best.cycle) / 2)
    const found = fewestStations(tasks, middle)
    if (found.stations <= stations) best = found
    else low = middle + 1
  }
  return best
}
