import type { LineSpec } from '@loopwright/line'
import type { Pool } from './pool.ts'
import { type Task, type TaskResult, TaskRunner } from './task.ts'

/** Between two tasks whatever else waits has its turn, a stop above all. */
function turn(): Promise<void> {
  return new Promise((resolve) => {
    if (typeof setImmediate === 'function') setImmediate(resolve)
    else {
      // in a browser a message is the quickest turn
      const { port1, port2 } = new MessageChannel()
      const here = port1 as unknown as { onmessage: () => void; close(): void }
      here.onmessage = () => {
        here.close()
        resolve()
      }
      port2.postMessage(null)
    }
  })
}

/**
 * A pool whose only thread is the one that calls: for tests, for small studies, and where there are no worker threads. A run gives way every few milliseconds, so that a stop is
 * heard however long it takes; closing the pool ends it.
 *
 * @example callingThread().size // => 1
 */
export function callingThread(): Pool {
  const runner = new TaskRunner()
  const lines: LineSpec[] = []
  let closed = false
  // a line is built once and runs one task at a time
  let before: Promise<unknown> = Promise.resolve()
  const perform = async (task: Task): Promise<TaskResult> => {
    const pieces = runner.pieces(task)
    for (;;) {
      await turn()
      if (closed) throw new Error('the run was given up: its pool is closed')
      const piece = pieces.next()
      if (piece.done === true) return piece.value
    }
  }
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
    run: (_, task) => {
      const run = before.then(() => perform(task))
      before = run.catch(() => {})
      return run
    },
    close: async () => {
      closed = true
    },
  }
}
