/** Tasks shared among stations in a row, exactly, on average times: how few stations can do a cycle, or how short a cycle some stations can do. */
import { type Balance, fewestStations, smallestCycle } from '@loopwright/stats/procedures'

/** A task: seconds, and what comes before it. */
export interface TaskToShare {
  readonly name: string
  /** mean, > 0 */
  readonly seconds: number
  /** names of the tasks that must come before */
  readonly after: readonly string[]
}

/** One of the two is asked. */
export type BalanceRequest = { readonly cycleSeconds: number } | { readonly stations: number }

/** Tasks by station, and the cycle that they keep; seconds. */
export interface BalanceResult {
  readonly kind: 'balance'
  readonly cycleSeconds: number
  readonly stations: readonly { readonly tasks: readonly string[]; readonly seconds: number }[]
  /** 1 − work / (stations × cycle) */
  readonly lossShare: number
}

/** times are rounded to these, so that sums are exact; seconds */
const UNIT = 0.01

/**
 * Shares tasks among as few stations as possible, or with as short a cycle; one of the optimal groupings.
 *
 * @throws RangeError       if a name stands twice, or a task comes after one that is not there
 * @throws StatisticsError  as `fewestStations` does: more than 25 tasks, a circle, a task longer than the cycle
 * @see Jackson, A computing procedure for a line balancing problem (1956)
 * @example taskBalance([{ name: 'a', seconds: 4, after: [] }, { name: 'b', seconds: 3, after: ['a'] }], { cycleSeconds: 7 }).stations.length // => 1
 */
export function taskBalance(tasks: readonly TaskToShare[], request: BalanceRequest): BalanceResult {
  const names = tasks.map(({ name }) => name)
  const twice = names.find((name, index) => names.indexOf(name) < index)
  if (twice !== undefined) throw new RangeError(`there are two tasks called "${twice}": give each a name of its own`)
  const arcs = tasks.flatMap(({ name, after }, index) =>
    after.map((before): [number, number] => {
      const first = names.indexOf(before)
      if (first < 0) throw new RangeError(`"${name}" comes after "${before}", which is no task; there are ${names.join(', ')}`)
      return [first, index]
    }),
  )
  const shared = { times: tasks.map(({ seconds }) => Math.round(seconds / UNIT)), arcs }
  const balance: Balance =
    'stations' in request ? smallestCycle(shared, request.stations) : fewestStations(shared, Math.round(request.cycleSeconds / UNIT))
  const seconds = (units: number): number => Math.round(units) / (1 / UNIT)
  const stations = balance.groups.map((group) => ({
    tasks: group.map((task) => names[task]!),
    seconds: seconds(group.reduce((sum, task) => sum + shared.times[task]!, 0)),
  }))
  const work = shared.times.reduce((sum, time) => sum + time, 0)
  return { kind: 'balance', cycleSeconds: seconds(balance.cycle), stations, lossShare: 1 - work / (stations.length * balance.cycle) }
}
