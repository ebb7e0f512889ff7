/** Threads of a worker, each in a pool of its own, so that one which ends takes none of the others with it. */
import type { LineSpec } from '@loopwright/line'
import { createPool, type Pool } from '../runs/pool.ts'
import type { Task, TaskResult } from '../runs/task.ts'
import { ThreadEnd } from '../runs/threadEnd.ts'

export interface ThreadSlots {
  /** jobs at once: more than threads, so that none waits for the queue */
  readonly depth: number
  /** Rejects with what the run threw, or with a ThreadEnd. */
  run(spec: LineSpec, task: Omit<Task, 'line'>): Promise<TaskResult>
  close(): Promise<void>
}

interface Slot {
  readonly pool: Pool
  /** that its thread has been told, and keeps */
  readonly lines: Set<LineSpec>
  busy: number
}

/** a worker works for months: a thread that knows so many lines ends, and another begins */
const LINES_MAX = 256

/**
 * @param threads   count, ≥ 1
 * @param linesMax  that a thread keeps; count, ≥ 1
 */
export function threadSlots(threads: number, linesMax = LINES_MAX): ThreadSlots {
  const started = (): Slot => {
    const pool = createPool(1)
    pool.start()
    return { pool, lines: new Set(), busy: 0 }
  }
  const slots = Array.from({ length: threads }, started)
  /** of those whose place another has taken, until their last job is done */
  const leaving = new Set<Slot>()
  const replace = (slot: Slot): void => {
    const place = slots.indexOf(slot)
    if (place < 0) return
    slots[place] = started()
    leaving.add(slot)
  }
  const closeIdle = async (slot: Slot): Promise<void> => {
    if (slot.busy > 0 || !leaving.delete(slot)) return
    await slot.pool.close()
  }
  return {
    depth: threads * slots[0]!.pool.depth,
    async run(spec, task) {
      const leastBusy = (): Slot => slots.reduce((least, one) => (one.busy < least.busy ? one : least))
      let slot = leastBusy()
      if (slot.lines.size >= linesMax && !slot.lines.has(spec)) {
        const full = slot
        replace(full)
        await closeIdle(full)
        slot = leastBusy()
      }
      const { pool, lines } = slot
      lines.add(spec)
      slot.busy += 1
      try {
        return await pool.run(0, { ...task, line: pool.line(spec) })
      } catch (error) {
        if (error instanceof ThreadEnd) replace(slot)
        throw error
      } finally {
        slot.busy -= 1
        await closeIdle(slot)
      }
    },
    close: async () => {
      await Promise.all([...slots, ...leaving].map(({ pool }) => pool.close()))
    },
  }
}
