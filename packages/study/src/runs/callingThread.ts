import type { LineSpec } from '@loopwright/line'
import type { Pool } from './pool.ts'
import { TaskRunner } from './task.ts'

/** Between two tasks whatever else waits has its turn, a stop above all. */
const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve))

/**
 * A pool whose only thread is the one that calls: for tests, for small studies, and where there are no worker threads.
 *
 * @example callingThread().size // => 1
 */
export function callingThread(): Pool {
  const runner = new TaskRunner()
  const lines: LineSpec[] = []
  return {
    size: 1,
    depth: 1,
    recalled: 0,
    line(spec) {
      const known = lines.indexOf(spec)
      if (known >= 0) return known
      runner.learnLine(lines.length, spec)
      return lines.push(spec) - 1
    },
    start: () => {},
    run: async (_, task) => {
      await turn()
      return runner.perform(task)
    },
    close: async () => {},
  }
}
