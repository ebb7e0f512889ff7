import { describe, expect, test } from 'vitest'
import { createPool } from './pool.ts'
import { replicate } from './replicate.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const spec = stationLoop()
const WARM = { carriers: 3, seed: '1', from: 0, to: 1, want: 'rows' } as const

describe('runs on threads', () => {
  test('are those of the calling thread, in order, for 1 and 2 workers', { tags: 'long' }, async () => {
    const here = await replicate(spec, { replications: 9 }, { seed: '7', workers: 0 })
    expect(here.map((run) => run.replication)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8])
    for (const workers of [1, 2]) expect(await replicate(spec, { replications: 9 }, { seed: '7', workers })).toEqual(here)
  })

  test('tell how far they are', async () => {
    const told: number[] = []
    await replicate(spec, { replications: 4 }, { seed: '7', workers: 1, onProgress: ({ done, total }) => told.push(done / total) })
    expect(told.at(-1)).toBe(1)
    expect(told).toEqual([...told].sort((a, b) => a - b))
  })

  test('throw on what a run throws', async () => {
    const wrong = stationLoop({ carriers: { ...spec.carriers, count: 3, start: [0, 0, 1] } })
    await expect(replicate(wrong, { replications: 2 }, { seed: '7', workers: 1 })).rejects.toThrow(/zone/)
  })

  test('stop when told, with whole replications from 0 on', { tags: 'long' }, async () => {
    const stop = new AbortController()
    const long = stationLoop({ window: { warmupSeconds: 0, endSeconds: 400_000 } })
    const pool = createPool(2)
    try {
      // both threads have their code before it counts, so that the one with replication 0 is not far behind the other
      await Promise.all([0, 1].map((thread) => pool.run(thread, { ...WARM, line: pool.line(spec) })))
      const onProgress = ({ done }: { readonly done: number }) => done >= 40 && stop.abort()
      const runs = await replicate(long, { replications: 100_000 }, { seed: '7', pool, long: true, signal: stop.signal, onProgress })
      expect(runs.length).toBeGreaterThanOrEqual(1)
      expect(runs.length).toBeLessThan(1000)
      expect(runs.map((run) => run.replication)).toEqual(runs.map((_, index) => index))
    } finally {
      await pool.close()
    }
  })

  test('stopped before the start: none', async () => {
    expect(await replicate(spec, { replications: 5 }, { seed: '7', workers: 1, signal: AbortSignal.abort() })).toEqual([])
  })

  test('share threads that are there already', async () => {
    const pool = createPool(1)
    try {
      const first = await replicate(spec, { replications: 2 }, { seed: '7', pool })
      const again = await replicate(stationLoop(), { replications: 2 }, { seed: '7', pool })
      expect(again).toEqual(first)
    } finally {
      await pool.close()
    }
  })
})
