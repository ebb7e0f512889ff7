import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { memoryStore } from '../store/memoryStore.ts'
import type { Pool } from './pool.ts'
import { replicate } from './replicate.ts'
import { onSameThreads, partOf } from './sameThreads.ts'
import type { StudyProgress } from './studyOptions.ts'

const line = stationLoop()
const work = { replications: 4, moves: 1, events: 1 }

test('all parts run on one pool, in front of which each has the store, and which is ended after them', async () => {
  const store = memoryStore()
  let shared: Pool | undefined
  const outputs = await onSameThreads({ seed: '1', workers: 1, store }, work, async (same) => {
    shared = same.pool
    const [one, two] = [await replicate(line, { replications: 2 }, same), await replicate(line, { replications: 3 }, same)]
    expect(store.report).toMatchObject({ recalled: 2, kept: 3 })
    return [one, two].map((runs) => runs.map(({ output }) => output))
  })
  expect(outputs[1]!.slice(0, 2)).toEqual(outputs[0])
  expect(outputs[1]).toEqual((await replicate(line, { replications: 3 }, { seed: '1', workers: 0 })).map(({ output }) => output))
  await expect(replicate(line, { replications: 1 }, { seed: '1', pool: shared! })).rejects.toThrow('closed')
})

test('threads that the caller has are left running', async () => {
  const ended: string[] = []
  const own = { size: 1, close: async () => ended.push('closed') } as unknown as Pool
  expect(await onSameThreads({ seed: '1', pool: own }, work, async ({ pool }) => pool)).toBe(own)
  expect(ended).toEqual([])
})

test('what a part tells of itself counts on from what is behind the whole', async () => {
  const told: StudyProgress[] = []
  const options = { seed: '1', workers: 0, onProgress: (progress: StudyProgress) => void told.push(progress) }
  await replicate(line, { replications: 2 }, partOf(options, 10, 30))
  expect(told.at(-1)).toMatchObject({ done: 12, total: 30 })
  expect(partOf({ seed: '1' }, 10, 30)).toEqual({ seed: '1' })
})
