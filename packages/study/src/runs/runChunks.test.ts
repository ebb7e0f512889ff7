import { expect, test } from 'vitest'
import type { Pool } from './pool.ts'
import { type ChunkWork, runChunks } from './runChunks.ts'
import { Schedule } from './schedule.ts'
import { NOTHING, type Task } from './task.ts'

/** Four threads that do nothing, a task at a time; tells which thread had which replication. */
function fourThreads(more: Partial<Pool> = {}): { readonly pool: Pool; readonly had: { thread: number; from: number }[] } {
  const had: { thread: number; from: number }[] = []
  const pool: Pool = {
    size: 4,
    depth: 1,
    recalled: 0,
    line: () => 0,
    start: () => {},
    close: async () => {},
    run: async (thread, { from }) => {
      had.push({ thread, from })
      return NOTHING
    },
    ...more,
  }
  return { pool, had }
}

const PARTS = 6
const work = (more: Partial<ChunkWork> = {}): ChunkWork => ({
  schedule: new Schedule(PARTS, 5),
  taskOf: ({ index, from, to }): Task => ({ line: 0, carriers: index + 1, seed: '1', from, to, want: 'rows' }),
  onResult: () => {},
  signal: undefined,
  ...more,
})

const threadsOf = (had: readonly { readonly thread: number }[]): number[] => [...new Set(had.map(({ thread }) => thread))].sort()

test('the openers begin all parts, and then all threads go on', async () => {
  const { pool, had } = fourThreads()
  await runChunks(pool, work({ openers: 2 }))
  expect(had).toHaveLength(5 * PARTS)
  expect(threadsOf(had.slice(0, PARTS))).toEqual([0, 1])
  expect(threadsOf(had)).toEqual([0, 1, 2, 3])
})

test('without a word of openers, and where a chunk is as long for everybody, all begin', async () => {
  const plain = fourThreads()
  await runChunks(plain.pool, work())
  expect(threadsOf(plain.had.slice(0, 4))).toEqual([0, 1, 2, 3])
  const fixed = fourThreads({ chunkOf: () => 1 })
  await runChunks(fixed.pool, work({ openers: 2 }))
  expect(threadsOf(fixed.had.slice(0, 4))).toEqual([0, 1, 2, 3])
})

test('who waits for the openers ends with them: after a stop, and after an error', async () => {
  const stop = new AbortController()
  const stopped = fourThreads()
  await runChunks(stopped.pool, work({ openers: 1, signal: stop.signal, onResult: () => stop.abort() }))
  expect(threadsOf(stopped.had)).toEqual([0])
  const broken = fourThreads({ run: () => Promise.reject(new Error('broken')) })
  await expect(runChunks(broken.pool, work({ openers: 1 }))).rejects.toThrow('broken')
})
