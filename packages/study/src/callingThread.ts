import type { LineSpec } from '@loopwright/line'
import type { Pool } from './pool.ts'
import { TaskRunner } from './task.ts'

/** A pool whose only thread is the one that calls: for tests, and where there are no worker threads. */
export function callingThread(): Pool {
  const runner = new TaskRunner()
  const lines: LineSpec[] = []
  return {
    size: 1,
    recalled: 0,
    line(spec) {
      const known = lines.indexOf(spec)
      if (known >= 0) return known
      runner.tell(lines.length, spec)
      return lines.push(spec) - 1
    },
    run: async (_, task) => runner.perform(task),
    close: async () => {},
  }
}
