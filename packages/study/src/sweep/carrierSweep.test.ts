import { describe, expect, test } from 'vitest'
import { callingThread } from '../runs/callingThread.ts'
import { carrierSweep, type SweepProgress, sweepHere } from './carrierSweep.ts'
import { replicateHere } from '../runs/replicate.ts'
import { smallLoop } from '../smallLoop.ts'
import type { FirstAnswer } from './soFar.ts'
import { memoryStore } from '../store/memoryStore.ts'
import { withCarriers } from '../change/withCarriers.ts'

const spec = smallLoop()
const options = { seed: '11', replications: 7, plan: 130 }

describe('a sweep', () => {
  const here = sweepHere(spec, [2, 3, 4, 5], options)

  test('is the same to the last bit for 1, 2 and 5 workers, and in the calling thread', async () => {
    const text = JSON.stringify(here)
    for (const workers of [1, 2, 5]) expect(JSON.stringify(await carrierSweep(spec, [5, 3, 2, 4, 3], { ...options, workers }))).toBe(text)
  })

  test('has for each count the units of its own replications', () => {
    expect(here.counts.map((count) => count.carriers)).toEqual([2, 3, 4, 5])
    for (const count of here.counts) {
      expect(count.units).toEqual(replicateHere(withCarriers(spec, count.carriers), options).map((run) => run.output))
    }
  })

  test('carries the law, and what turns its rates into units', () => {
    expect(here.law!.carriersLow).toBe(Math.ceil(53 / 24))
    expect(here.lawSeconds).toBe(3600 - 600)
    // One exchange at the work: 2 + 20 + 1 + 1 = 24 s; 3000 s of work in the window.
    expect(here.counts[2]!.law!.stationLimited! * here.lawSeconds).toBeCloseTo(3000 / 24, 10)
  })

  test('a count added changes no number of the others', () => {
    const alone = sweepHere(spec, [4], options).counts[0]
    expect(alone).toEqual(here.counts[2])
  })

  test('answers by its rule', () => {
    expect(here.answer!.best).toBeGreaterThanOrEqual(3)
    expect(here.answer!.chosen).not.toBeNull()
    expect(here.partial).toBe(false)
  })
})

test('progress goes up to the end; precision is known from the second replication of all counts on', async () => {
  const told: SweepProgress[] = []
  await carrierSweep(spec, [3, 4], { ...options, workers: 2, onProgress: (progress) => told.push(progress) })
  expect(told.at(-1)).toMatchObject({ done: 28, total: 28, recalled: 0 })
  expect(told[0]!.precision).toBeNull()
  expect(told.at(-1)!.precision).toBeGreaterThan(0)
})

test('the first answer is told once, before the end, and is the same for any number of workers', async () => {
  const told = new Map<number, FirstAnswer[]>()
  for (const workers of [1, 2]) {
    let last = 0
    const firsts: FirstAnswer[] = []
    await carrierSweep(spec, [3, 4, 5], {
      ...options,
      replications: 30,
      workers,
      onProgress: ({ done }) => {
        last = done
      },
      onFirst: (first) => {
        expect(last).toBeLessThan(135)
        firsts.push(first)
      },
    })
    told.set(workers, firsts)
  }
  const [first] = told.get(1)!
  expect(told.get(1)).toHaveLength(1)
  expect(told.get(2)).toEqual(told.get(1))
  const mean = (carriers: number): number => {
    const of = (seed: string, replications: number) =>
      replicateHere(withCarriers(spec, carriers), { seed, replications }).map((run) => run.output)
    const units = [...of('11-pilot', 15), ...of('11', 5)]
    return units.reduce((sum, made) => sum + made, 0) / units.length
  }
  expect(first!.unitsMean).toBe(mean(first!.leading))
  expect(Math.max(mean(3), mean(4), mean(5))).toBe(first!.unitsMean)
})

test('a stop leaves whole replications from 0 on, the same that an undisturbed sweep has, and counts that go together', async () => {
  const stop = new AbortController()
  const partial = await carrierSweep(spec, [3, 4, 5], {
    seed: '11',
    replications: 500_000,
    workers: 2,
    signal: stop.signal,
    onProgress: ({ done }) => done > 400 && stop.abort(),
  })
  expect(partial.partial).toBe(true)
  const n = partial.counts.map((count) => count.replications)
  expect(Math.min(...n)).toBeGreaterThan(10)
  expect(Math.max(...n) - Math.min(...n)).toBeLessThanOrEqual(100)
  expect(partial.answer!.replications).toBe(Math.min(...n))
  const whole = sweepHere(spec, [3, 4, 5], { seed: '11', replications: Math.max(...n) })
  expect(partial.answer!.reference).toBe(whole.answer!.reference)
  for (const [index, count] of partial.counts.entries())
    expect(count.units).toEqual(whole.counts[index]!.units.slice(0, count.replications))
})

test('with a store: the same bits, and only what is new is run', async () => {
  const store = memoryStore()
  const pool = callingThread()
  const plain = sweepHere(spec, [3, 4], options)
  expect(await carrierSweep(spec, [3], { ...options, pool, store })).toMatchObject({ counts: [plain.counts[0]] })
  expect(store.report).toMatchObject({ kept: 7, recalled: 0 })
  expect(await carrierSweep(spec, [3, 4], { ...options, pool, store })).toEqual(plain)
  expect(store.report).toMatchObject({ kept: 7 + 7 + 14, recalled: 7 })
  const told: SweepProgress[] = []
  expect(await carrierSweep(spec, [3, 4], { ...options, store, workers: 2, onProgress: (progress) => told.push(progress) })).toEqual(plain)
  expect(told.at(-1)).toMatchObject({ done: 28, recalled: 28 })
})

test('what cannot be swept is refused before anything runs', async () => {
  await expect(carrierSweep(spec, [], options)).rejects.toThrow('at least one number of carriers')
  await expect(carrierSweep(spec, [8], options)).rejects.toThrow('takes 1 to 7 carriers, not 8')
  await expect(carrierSweep(spec, [3], { ...options, replications: 0 })).rejects.toThrow('at least 1, not 0')
  await expect(carrierSweep(spec, [3], { ...options, workers: 0 })).rejects.toThrow('workers must be a whole number')
})
