/** Threads of a worker, each in a pool of its own, so that one which ends takes none of the others with it. */
import type { LineSpec } from '@loopwright/line'
import { createPool, type Pool } from '../runs/pool.ts'
import type { Task, TaskResult } from '../runs/task.ts'

export interface ThreadSlots {
  /** jobs at once: more than threads, so that none waits for the queue */
  readonly depth: number
  /** Rejects with what the run threw, or with the end of the thread. */
  run(spec: LineSpec, task: Omit<Task, 'line'>): Promise<TaskResult>
  close(): Promise<void>
}

interface Slot {
  pool: Pool
  busy: number
}

/** @param threads  count, ≥ 1 */
export function threadSlots(threads: number): ThreadSlots {
  const slots = Array.from({ length: threads }, (): Slot => ({ pool: createPool(1), busy: 0 }))
  const depth = slots[0]!.pool.depth
  for (const { pool } of slots) pool.start()
  return {
    depth: threads * depth,
    async run(spec, task) {
      const slot = slots.reduce((least, one) => (one.busy < least.busy ? one : least))
      const { pool } = slot
      slot.busy += 1
      try {
        return await pool.run(0, { ...task, line: pool.line(spec) })
      } catch (error) {
        if (isThreadEnd(error) && slot.pool === pool) {
          slot.pool = createPool(1)
          slot.pool.start()
          await pool.close()
        }
        throw error
      } finally {
        slot.busy -= 1
      }
    },
    close: async () => {
      await Promise.all(slots.map(({ pool }) => pool.close()))
    },
  }
}

/** Whether a thread ended, which says nothing about the run that it had. */
export const isThreadEnd = (error: unknown): boolean =>
  error instanceof Error &&
  (error.name === 'OutOfMemory' || /a worker thread ended early|ended early: the pool is closed/.test(error.message))
