import { StatisticsError } from '../statisticsError.ts'

/** Work to be shared among stations in a row. */
export interface Tasks {
  /** whole numbers above 0, in one unit, such as tenths of a second */
  readonly times: readonly number[]
  /** [before, after], tasks from 0 */
  readonly arcs: readonly (readonly [number, number])[]
}

const TASKS_MAX = 25

/**
 * Checks the tasks and gives for each the set of those that must come before, as bits.
 *
 * @throws StatisticsError E_BALANCE, E_TOO_LARGE; a circle is printed, tasks from 1
 */
export function predecessorBits({ times, arcs }: Tasks): Int32Array {
  const n = times.length
  if (n === 0) throw new StatisticsError('E_BALANCE', 'There are no tasks: give at least one.')
  if (n > TASKS_MAX)
    throw new StatisticsError('E_TOO_LARGE', `${n} tasks are too many for an exact answer: group them into at most ${TASKS_MAX}.`)
  const odd = times.findIndex((time) => !(Number.isInteger(time) && time > 0))
  if (odd >= 0) {
    throw new StatisticsError('E_BALANCE', `Task ${odd + 1} takes ${times[odd]}: give whole numbers above 0, such as tenths of a second.`)
  }
  const bits = new Int32Array(n)
  for (const [before, after] of arcs) {
    if (!(before in bits) || !(after in bits)) {
      throw new StatisticsError('E_BALANCE', `Task ${before + 1} before task ${after + 1}: there are only ${n} tasks.`)
    }
    bits[after]! |= 1 << before
  }
  const circle = findCircle(bits)
  if (circle !== null) {
    throw new StatisticsError(
      'E_BALANCE',
      `Tasks ${circle.map((task) => task + 1).join(' → ')} wait for each other in a circle: take one of these precedences away.`,
    )
  }
  return bits
}

/** Tasks of a circle, the first again at the end; null: there is none. */
function findCircle(before: Int32Array): number[] | null {
  const done = new Set<number>()
  const walk = (task: number, path: readonly number[]): number[] | null => {
    if (path.includes(task)) return [task, ...path.slice(0, path.indexOf(task) + 1)]
    if (done.has(task)) return null
    for (let other = 0; other < before.length; other++) {
      if ((before[task]! & (1 << other)) === 0) continue
      const circle = walk(other, [task, ...path])
      if (circle !== null) return circle
    }
    done.add(task)
    return null
  }
  for (let task = 0; task < before.length; task++) {
    const circle = walk(task, [])
    if (circle !== null) return circle
  }
  return null
}
