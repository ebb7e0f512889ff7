/** A pool whose tasks are all carried out by the same engine. */
import type { Pool } from './pool.ts'
import type { ForcedEngine } from './task.ts'

/**
 * The pool with every task put to one engine. Its tasks reject with a RangeError where that engine does not hold for the line.
 *
 * @param pool  its threads; closing one closes the other
 */
export function forcedPool(pool: Pool, engine: ForcedEngine): Pool {
  return {
    size: pool.size,
    depth: pool.depth,
    get recalled() {
      return pool.recalled
    },
    line: (spec) => pool.line(spec),
    ...(pool.chunkOf === undefined ? {} : { chunkOf: (task) => pool.chunkOf!(task) }),
    start: () => pool.start(),
    run: (thread, task) => pool.run(thread, { ...task, engine }),
    close: () => pool.close(),
  }
}
