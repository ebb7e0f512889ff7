/** Works through a schedule on the threads of a pool, until it is done or told to stop. */
import { heardOrNot } from './heardOrNot.ts'
import { isOthersShare } from '../share/othersShare.ts'
import type { Pool } from './pool.ts'
import type { Chunk, Schedule } from './schedule.ts'
import type { Task, TaskResult } from './task.ts'

export interface ChunkWork {
  readonly schedule: Schedule
  readonly taskOf: (chunk: Chunk) => Task
  readonly onResult: (chunk: Chunk, result: TaskResult) => void
  readonly signal: AbortSignal | undefined
  /** threads that begin; the others follow when each part has begun. Default, and where a chunk is as long for everybody: all */
  readonly openers?: number
}

/** milliseconds that tasks under way get to end by themselves after a stop */
const GRACE_MS = 200

/**
 * Runs all chunks. After a stop nothing new begins; what is under way gets a moment, then its results are given up.
 * Rejects with the first error that a task throws; a task that is another's share is left out, and all else is run before that is thrown.
 */
export async function runChunks(pool: Pool, work: ChunkWork): Promise<void> {
  const { schedule, signal } = work
  let left = false
  let given = false
  let others: Error | null = null
  const { chunkOf } = pool
  const fixed = chunkOf === undefined ? undefined : (index: number): number => chunkOf(work.taskOf({ index, from: 0, to: 0 }))
  const openers = fixed === undefined ? (work.openers ?? pool.size) : pool.size
  let open = (): void => {}
  const opened = new Promise<void>((resolve) => {
    open = resolve
  })
  const thread = async (index: number): Promise<void> => {
    if (index >= openers) await opened
    for (;;) {
      if (signal?.aborted === true || left) return
      const chunk = schedule.next(index, fixed)
      if (schedule.hasOpened) open()
      if (chunk === null) return
      let result: TaskResult
      try {
        result = await pool.run(index, work.taskOf(chunk))
      } catch (error) {
        if (!isOthersShare(error)) throw error
        others = error
        continue
      }
      if (given) return
      work.onResult(chunk, result)
    }
  }
  const threads = Array.from({ length: pool.size * pool.depth }, (_, place) =>
    heardOrNot(
      thread(place % pool.size)
        .catch((error: unknown) => {
          left = true
          throw error
        })
        .finally(open),
    ),
  )
  const all = Promise.all(threads)
  const stopped = afterStop(signal)
  try {
    await Promise.race([all, stopped.promise])
  } finally {
    given = true
    stopped.cancel()
    all.catch(() => {})
  }
  if (others !== null && signal?.aborted !== true) throw others
}

/** What came in for replications 0 … n − 1, up to the first that is missing. */
export function withoutGap<T>(came: readonly T[]): T[] {
  let whole = 0
  while (came[whole] !== undefined) whole += 1
  return came.slice(0, whole)
}

/** Resolves a moment after the signal; without one, never. */
function afterStop(signal: AbortSignal | undefined): { promise: Promise<void>; cancel: () => void } {
  let timer: ReturnType<typeof setTimeout> | undefined
  let wait = (): void => {}
  const promise = new Promise<void>((resolve) => {
    wait = () => {
      timer = setTimeout(resolve, GRACE_MS)
    }
    if (signal?.aborted === true) wait()
    else signal?.addEventListener('abort', wait, { once: true })
  })
  return {
    promise,
    cancel: () => {
      clearTimeout(timer)
      signal?.removeEventListener('abort', wait)
    },
  }
}
