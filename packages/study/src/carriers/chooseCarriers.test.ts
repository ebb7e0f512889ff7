import { loopLine } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { callingThread } from '../runs/callingThread.ts'
import { type CarriersProgress, chooseCarriers } from './chooseCarriers.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { memoryStore } from '../store/memoryStore.ts'

const spec = stationLoop()
// The tests share their runs: that a store changes nothing is tested below.
const fresh = { seed: '11', pool: callingThread() }
const here = { ...fresh, store: memoryStore() }

describe('a carrier study', async () => {
  const study = await chooseCarriers(spec, { plan: 110 }, here)

  test('names a count that is confirmed, after looks that each spend their part of the chance of error', () => {
    const { answer, looks, pilot } = study
    expect(study).toMatchObject({ kind: 'carrier study', seed: '11', partial: false })
    expect(pilot).toMatchObject({ seed: '11-pilot', replications: 15 })
    expect(answer!.chosen).toBe(looks.at(-1)!.chosen)
    expect(answer!.chosen).toBeLessThanOrEqual(answer!.reference)
    for (const [index, { alpha, replications }] of looks.entries()) {
      expect(alpha).toBeCloseTo(((5 / 8) * 0.05) / 2 ** (index + 1), 15)
      expect(replications).toBe(looks[0]!.replications * 2 ** index)
      expect(looks.slice(0, index).every((look) => look.undecided !== null)).toBe(true)
    }
  })

  test('tells of the answer, and of the count that meets the plan, from a hundred replications at least', () => {
    const replicationsOf = (carriers: number): number => study.counts.find((count) => count.carriers === carriers)!.replications
    expect(replicationsOf(study.answer!.chosen!)).toBeGreaterThanOrEqual(100)
    const { carriers, about, open, best, counts } = study.planAnswer!
    const decides = carriers ?? about ?? open[0] ?? best!
    expect(replicationsOf(decides)).toBeGreaterThanOrEqual(100)
    expect(counts.find((count) => count.carriers === decides)!.n).toBeLessThanOrEqual(replicationsOf(decides))
  })

  test('shows what one carrier more brings, and the flat zone, which begins with the answer', () => {
    expect(study.flat!.from).toBe(study.answer!.chosen)
    expect(study.steps.map(({ from, to }) => to - from)).toEqual(study.steps.map(() => 1))
    const step = study.steps[0]!
    const [before, after] = study.counts
    const n = step.difference.n
    const mean = (units: readonly number[]): number => units.slice(0, n).reduce((sum, made) => sum + made, 0) / n
    expect(step.difference.mean).toBeCloseTo(mean(after!.units) - mean(before!.units), 9)
  })

  test('is the same to the last bit on threads, with a store, and resumed from one', { tags: 'long' }, async () => {
    const text = JSON.stringify(study)
    const store = memoryStore()
    expect(JSON.stringify(await chooseCarriers(spec, { plan: 110 }, { seed: '11', workers: 2, store }))).toBe(text)
    const { kept } = store.report
    expect(kept).toBeGreaterThan(300)
    expect(JSON.stringify(await chooseCarriers(spec, { plan: 110 }, { ...here, store }))).toBe(text)
    expect(store.report.kept).toBe(kept)
  })
})

test('the range grows at either edge while the best, or what may do, lies there', async () => {
  const wide = await chooseCarriers(spec, {}, here)
  for (const counts of [[1], [2, 3], [6, 7]]) {
    const study = await chooseCarriers(spec, { counts }, here)
    expect(study.answer!.chosen).toBe(wide.answer!.chosen)
    expect(study.answer!.bestAtUpperEnd).toBe(study.answer!.best === 7)
    expect(study.answer!.chosenAtLowerEnd).toBe(false)
  }
})

test('a wider border is met by fewer carriers, or as many', async () => {
  const chosen: number[] = []
  for (const within of [0.005, 0.05, 0.3]) chosen.push((await chooseCarriers(spec, { within }, here)).answer!.chosen!)
  expect(chosen[0]).toBeGreaterThanOrEqual(chosen[1]!)
  expect(chosen[1]).toBeGreaterThan(chosen[2]!)
})

test('nothing left to chance: one run of each count, settled at once', async () => {
  const constant = (value: number) => ({ kind: 'constant', value }) as const
  const line = stationLoop({
    stations: spec.stations.map((station) => ({
      ...station,
      work: station.work === null ? null : [{ task: 1, seconds: [constant(20)] }],
    })),
    breakdowns: [],
  })
  const study = await chooseCarriers(line, { plan: 125 }, here)
  expect(study).toMatchObject({ settled: true, chance: false, looks: [{ replications: 1 }], pilot: { replications: 1 } })
  expect(new Set(study.counts.map((count) => count.replications))).toEqual(new Set([1]))
  // 3000 s without the break, one product each 24 s: 125
  expect(study.planAnswer).toMatchObject({ carriers: 3, about: null, open: [], settled: true })
  expect(study.counts.find((count) => count.carriers === 3)!.mean).toMatchObject({ mean: 125, halfWidth: 0, n: 1, status: 'no spread' })
  // One exchange at the work station is 24 s, a lap 53 s: three carriers bring one product each 24 s.
  expect(study.answer!.chosen).toBe(3)
})

test('the plan is settled: the smallest count that may meet it and its neighbours are shown, or known to ± 2 points', async () => {
  const study = await chooseCarriers(spec, { plan: 110 }, here)
  const { carriers, about, settled, counts } = study.planAnswer!
  expect(settled).toBe(true)
  const deciding = carriers ?? about!
  for (const count of counts.filter((each) => Math.abs(each.carriers - deciding) <= 1)) {
    expect(['met', 'not met', 'about']).toContain(count.verdict)
    if (count.verdict === 'about') expect(count.high - count.low).toBeLessThanOrEqual(0.06)
  }
  expect(study.counts.map((count) => count.planVerdict?.verdict ?? null)).toEqual(
    study.counts.map(({ carriers: of }) => counts.find((count) => count.carriers === of)?.verdict ?? null),
  )
})

test('a plan far below what the line can make: the range grows down until a count misses it', async () => {
  const study = await chooseCarriers(spec, { counts: [4, 5, 6], plan: 40 }, here)
  expect(study.planAnswer).toMatchObject({ carriers: 1, settled: true })
})

test('nothing is made: no answer, nothing settled', async () => {
  const study = await chooseCarriers(stationLoop({ window: { warmupSeconds: 0, endSeconds: 5 }, breaks: [] }), { plan: 10 }, here)
  expect(study).toMatchObject({ settled: false, answer: { chosen: null, notConfirmed: null }, flat: null })
  expect(study.planAnswer).toMatchObject({ carriers: null, about: null, best: null })
})

test('progress names what is being decided, and counts up to the end', async () => {
  const told: CarriersProgress[] = []
  await chooseCarriers(spec, {}, { ...fresh, onProgress: (progress) => told.push(progress) })
  expect(told[0]!.deciding).toBe('best')
  expect(told.at(-1)).toMatchObject({ deciding: 'smallest', recalled: 0 })
  expect(told.at(-1)!.done).toBe(told.at(-1)!.total)
  for (const [index, { done }] of told.slice(1).entries()) expect(done).toBeGreaterThan(told[index]!.done)
})

describe('a stop', () => {
  const stopped = async (deciding: CarriersProgress['deciding']) => {
    const stop = new AbortController()
    const onProgress = (progress: CarriersProgress) => progress.deciding === deciding && progress.precision !== null && stop.abort()
    return await chooseCarriers(spec, {}, { ...fresh, signal: stop.signal, onProgress })
  }

  test('in the pilot: its runs are shown, without an answer', async () => {
    const study = await stopped('best')
    expect(study).toMatchObject({ partial: true, settled: false, seed: '11-pilot', answer: null, looks: [], planAnswer: null })
    expect(study.counts.every((count) => count.replications >= 2)).toBe(true)
  })

  test('in the judged runs: what they tell so far', async () => {
    const study = await stopped('smallest')
    expect(study).toMatchObject({ partial: true, settled: false, seed: '11' })
    expect(study.answer!.replications).toBeGreaterThanOrEqual(2)
  })
})

test('what cannot be asked is refused before anything runs', async () => {
  await expect(chooseCarriers(spec, { counts: [8] }, here)).rejects.toThrow('takes 1 to 7 carriers, not 8')
  await expect(chooseCarriers(spec, { within: 0 }, here)).rejects.toThrow('within must be a share')
  await expect(chooseCarriers(spec, { level: 95 }, here)).rejects.toThrow('level must be a share')
})

test('counts are widened up to the most that can move: zones that are not waited in hold none', async () => {
  const transfer = { lift: 1, lower: 1, enterOnlyIfExitClear: true }
  const corners = loopLine({
    zones: 6,
    zoneLength: 1.5,
    drive: { speed: 0.3 },
    own: { Z02: { transfer }, Z05: { transfer } },
    carriers: { count: 1, length: 1.2, width: 1.2 },
    stations: { S: { zone: 'Z01', unload: 5, load: 5 } },
    end: 1800,
  })
  const { counts } = await chooseCarriers(corners, { counts: [1, 2] }, here)
  expect(counts.map(({ carriers }) => carriers)).toEqual([1, 2, 3])
})
