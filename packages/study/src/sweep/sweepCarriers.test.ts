import { afterAll, describe, expect, test } from 'vitest'
import { callingThread } from '../runs/callingThread.ts'
import { createPool } from '../runs/pool.ts'
import { type SweepProgress, sweepCarriers } from './sweepCarriers.ts'
import { replicate } from '../runs/replicate.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import type { FirstAnswer } from './firstAnswer.ts'
import { memoryStore } from '../store/memoryStore.ts'
import { withCarriers } from '../change/withCarriers.ts'

const spec = stationLoop()
const request = { replications: 7, plan: 130 }
const here = { seed: '11', workers: 0 }
/** of one, two and three threads, for the whole file: to start a thread from source takes longer than what it runs here */
const pools = [1, 2, 3].map((workers) => createPool(workers))
const [, two] = pools
afterAll(() => Promise.all(pools.map((pool) => pool.close())))

describe('a sweep', async () => {
  const swept = await sweepCarriers(spec, { ...request, counts: [2, 3, 4, 5] }, here)

  test('is the same to the last bit for 1, 2 and 3 workers as in the calling thread', { tags: 'long' }, async () => {
    const text = JSON.stringify(swept)
    const counts = [5, 3, 2, 4, 3]
    for (const pool of pools) expect(JSON.stringify(await sweepCarriers(spec, { ...request, counts }, { seed: '11', pool }))).toBe(text)
  })

  test('has for each count the units of its own replications', async () => {
    expect(swept.counts.map((count) => count.carriers)).toEqual([2, 3, 4, 5])
    for (const count of swept.counts) {
      const runs = await replicate(withCarriers(spec, count.carriers), request, here)
      expect(count.units).toEqual(runs.map((run) => run.output))
    }
  })

  test('carries the law, and what turns its rates into units', () => {
    expect(swept.law!.carriersLow).toBe(Math.ceil(53 / 24))
    expect(swept.lawSeconds).toBe(3600 - 600)
    // One exchange at the work: 2 + 20 + 1 + 1 = 24 s; 3000 s of work in the window.
    expect(swept.counts[2]!.law!.stationLimited! * swept.lawSeconds).toBeCloseTo(3000 / 24, 10)
  })

  test('a count added changes no number of the others', async () => {
    const alone = await sweepCarriers(spec, { ...request, counts: [4] }, here)
    expect(alone.counts[0]).toEqual(swept.counts[2])
  })

  test('answers by its rule', () => {
    expect(swept.answer!.best).toBeGreaterThanOrEqual(3)
    expect(swept.answer!.chosen).not.toBeNull()
    expect(swept.partial).toBe(false)
  })
})

test('progress goes up to the end; precision is known from the second replication of all counts on', { tags: 'long' }, async () => {
  const told: SweepProgress[] = []
  await sweepCarriers(spec, { ...request, counts: [3, 4] }, { seed: '11', pool: two!, onProgress: (progress) => told.push(progress) })
  expect(told.at(-1)).toMatchObject({ done: 28, total: 28, recalled: 0 })
  expect(told[0]!.precision).toBeNull()
  expect(told.at(-1)!.precision).toBeGreaterThan(0)
})

test('the first answer is told once, before the end, and is the same for any number of workers', { tags: 'long' }, async () => {
  const told = new Map<number, FirstAnswer[]>()
  for (const pool of pools) {
    let last = 0
    const firsts: FirstAnswer[] = []
    await sweepCarriers(
      spec,
      { ...request, counts: [3, 4, 5], replications: 30 },
      {
        seed: '11',
        pool,
        onProgress: ({ done }) => {
          last = done
        },
        onFirst: (first) => {
          expect(last).toBeLessThan(135)
          firsts.push(first)
        },
      },
    )
    told.set(pool.size, firsts)
  }
  const [first] = told.get(1)!
  expect(told.size).toBe(pools.length)
  for (const firsts of told.values()) expect(firsts).toEqual([first])
  const mean = async (carriers: number): Promise<number> => {
    const of = (seed: string, replications: number) => replicate(withCarriers(spec, carriers), { replications }, { seed, workers: 0 })
    const units = [...(await of('11-pilot', 7)), ...(await of('11', 3))].map((run) => run.output)
    return units.reduce((sum, made) => sum + made, 0) / units.length
  }
  const means = [await mean(3), await mean(4), await mean(5)]
  expect(first!.unitsMean).toBe(means[first!.leading - 3])
  expect(Math.max(...means)).toBe(first!.unitsMean)
})

test('a stop leaves whole replications from 0 on, the same that an undisturbed sweep has, and counts that go together', {
  tags: 'long',
}, async () => {
  const stop = new AbortController()
  const onProgress = ({ done }: SweepProgress) => done > 400 && stop.abort()
  const counts = [3, 4, 5]
  const partial = await sweepCarriers(spec, { counts, replications: 500_000 }, { seed: '11', pool: two!, signal: stop.signal, onProgress })
  expect(partial.partial).toBe(true)
  const n = partial.counts.map((count) => count.replications)
  expect(Math.min(...n)).toBeGreaterThan(10)
  expect(Math.max(...n) - Math.min(...n)).toBeLessThanOrEqual(100)
  expect(partial.answer!.replications).toBe(Math.min(...n))
  const whole = await sweepCarriers(spec, { counts, replications: Math.max(...n) }, here)
  expect(partial.answer!.reference).toBe(whole.answer!.reference)
  for (const [index, count] of partial.counts.entries())
    expect(count.units).toEqual(whole.counts[index]!.units.slice(0, count.replications))
})

test('with a store: the same bits, and only what is new is run', async () => {
  const store = memoryStore()
  const pool = callingThread()
  const both = { ...request, counts: [3, 4] }
  const plain = await sweepCarriers(spec, both, here)
  expect(await sweepCarriers(spec, { ...request, counts: [3] }, { seed: '11', pool, store })).toMatchObject({ counts: [plain.counts[0]] })
  expect(store.report).toMatchObject({ kept: 7, recalled: 0 })
  expect(await sweepCarriers(spec, both, { seed: '11', pool, store })).toEqual(plain)
  expect(store.report).toMatchObject({ kept: 7 + 7 + 14, recalled: 7 })
  const told: SweepProgress[] = []
  expect(await sweepCarriers(spec, both, { seed: '11', store, pool: two!, onProgress: (progress) => told.push(progress) })).toEqual(plain)
  expect(told.at(-1)).toMatchObject({ done: 28, recalled: 28 })
})

test('what cannot be swept is refused before anything runs', async () => {
  await expect(sweepCarriers(spec, { ...request, counts: [] }, here)).rejects.toThrow('at least one number of carriers')
  await expect(sweepCarriers(spec, { ...request, counts: [8] }, here)).rejects.toThrow('takes 1 to 7 carriers, not 8')
  await expect(sweepCarriers(spec, { counts: [3], replications: 0 }, here)).rejects.toThrow('at least 1 replication, not 0')
  await expect(sweepCarriers(spec, { ...request, counts: [3] }, { seed: '11', workers: -1 })).rejects.toThrow(
    'workers must be a whole number',
  )
})
