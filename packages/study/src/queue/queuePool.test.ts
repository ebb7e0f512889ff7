import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type RedisServer, redisServer } from '../../../../tests/faults/redisServer.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { replicate } from '../runs/replicate.ts'
import { compareLines } from '../compare/compareLines.ts'
import { sweepCarriers } from '../sweep/sweepCarriers.ts'
import { jobId, lineDigest, resultKey } from './job.ts'
import { openQueuePool } from './queuePool.ts'
import { type WorkDone, workAtQueue } from './queueWorker.ts'
import { cancelQueue, queueState, retryQueue } from './queueState.ts'
import { connect, type QueuePlace } from './redis.ts'
import { announce, type Present } from './registry.ts'
import { workMark } from './workMark.ts'

import { now } from '../../../../tests/faults/clock.ts'
const spec = stationLoop()
const OTHER = '0.0.1-ffffffffffffffff'

describe('a study by a queue', { tags: 'long' }, () => {
  let server: RedisServer
  let place: QueuePlace
  const ended = new AbortController()
  const said = { worker: [] as string[], study: [] as string[] }
  let work: Promise<WorkDone>
  const opened = () => openQueuePool(place, { say: (sentence) => said.study.push(sentence), now })

  beforeAll(async () => {
    server = await redisServer()
    place = {
      address: { host: '127.0.0.1', port: server.port, database: 0, encrypted: false },
      access: { user: null, password: null, authorities: null },
    }
    work = workAtQueue(place, { threads: 1, signal: ended.signal, say: (sentence) => said.worker.push(sentence), now, idleSeconds: null })
  })
  afterAll(async () => {
    ended.abort()
    await work
    await server.stop()
  })

  test('gives the bits of one machine: rows, results, lines that are the same', async () => {
    const pool = await opened()
    try {
      const all = async (options: Parameters<typeof replicate>[2]) => [
        await replicate(spec, { replications: 7 }, options),
        await sweepCarriers(spec, { counts: [2, 3, 4], replications: 60 }, options),
        await compareLines(
          ['a', 'b'].map((name) => ({ name, line: stationLoop(), plan: null })),
          { replications: 20 },
          options,
        ),
      ]
      expect(JSON.stringify(await all({ seed: '5', pool }))).toBe(JSON.stringify(await all({ seed: '5', workers: 0 })))
    } finally {
      await pool.close()
    }
    expect(said.study.join('\n')).toMatch(/^1 worker with 1 thread at 127\.0\.0\.1:/)
  })

  test('leaves nothing on the server but the line', async () => {
    const { redis } = await connect(place)
    const left = (await redis.keys('loopwright:*')).filter((key) => /:result:|-\d+-\d+$/.test(key))
    redis.disconnect()
    expect(left).toEqual([])
  })

  test('rejects with what a run throws, at once', async () => {
    const pool = await opened()
    try {
      const line = pool.line(spec)
      await expect(pool.run(0, { line, carriers: 99, seed: '5', from: 0, to: 1, want: 'rows' })).rejects.toThrow(RangeError)
    } finally {
      await pool.close()
    }
  })

  test('a changed answer is no answer: it is computed again', async () => {
    const pool = await opened()
    const { redis } = await connect(place)
    try {
      const line = pool.line(spec)
      const task = { line, carriers: 3, seed: '6', from: 0, to: 2, want: 'rows' } as const
      const right = await pool.run(0, task)
      const { runKey } = await import('../store/runKey.ts')
      const id = jobId({ key: runKey(spec, 3, '6', 'rows'), from: 0, to: 2 })
      await redis.set(resultKey(workMark(), id), Buffer.from('loopwright-store 1 but not quite'))
      expect((await pool.run(0, task)).rows).toEqual(right.rows)
    } finally {
      redis.disconnect()
      await pool.close()
    }
  })

  test('jobs that this engine did not write are refused by name; they can be told and taken away', async () => {
    const { redis, options, bullmq } = await connect(place)
    const { PREFIX, queueOf } = await import('./job.ts')
    const queue = new bullmq.Queue(queueOf(workMark()), { connection: options, prefix: PREFIX })
    const job = { mark: OTHER, key: 'ab'.repeat(32), line: lineDigest(''), carriers: 3, seed: '1', from: 0, to: 1, want: 'rows' }
    await queue.add('runs', job, { jobId: 'foreign-1' })
    await queue.add('runs', 'no job at all', { jobId: 'foreign-2' })
    const found = async (): Promise<string[]> => (await queueState(place)).setAside.map(({ id, why }) => `${id} ${why}`).sort()
    while ((await found()).length < 2) await new Promise((resolve) => setTimeout(resolve, 50))
    expect(await found()).toEqual([
      expect.stringMatching(/^foreign-1 .*the job is for engine 0\.0\.1-f+; this one is /),
      expect.stringMatching(/^foreign-2 .*it is no record/),
    ])
    expect(await retryQueue(place)).toBe(2)
    expect(await found()).toEqual([])
    await queue.close()
    redis.disconnect()
  })

  test('who has another engine is told so on both sides, and does nothing', async () => {
    const { redis } = await connect(place)
    const other: Present = {
      kind: 'study',
      id: 'x',
      mark: OTHER,
      machine: 'Node v1, abacus',
      host: 'elsewhere',
      threads: 0,
      jobs: 0,
      asked: 3,
    }
    const leave = announce(redis, other, () => ({ mark: OTHER, machine: other.machine, host: other.host }))
    while (!said.worker.some((sentence) => sentence.includes(OTHER))) await new Promise((resolve) => setTimeout(resolve, 100))
    expect(
      said.worker.filter((sentence) => sentence.startsWith('refused: a study of elsewhere (Node v1, abacus) wants engine 0.0.1-')),
    ).toHaveLength(1)
    await leave()
    redis.disconnect()
  })

  test('what nobody has begun can be taken back', async () => {
    expect(await cancelQueue(place)).toBe(0)
    const { queues } = await queueState(place)
    expect(queues.find(({ current }) => current)).toMatchObject({ waiting: 0, setAside: 0 })
  })
})
