import { outputInterval } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { sweepCarriers } from '../sweep/sweepCarriers.ts'
import { replicate } from './replicate.ts'
import { runMany, runsResult } from './runsResult.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const spec = stationLoop()
const request = { seed: '4', replications: 6, plan: 100 }
const here = { seed: '4', workers: 0 }
const runs = await replicate(spec, request, here)

test('the count of a sweep, and intervals', async () => {
  const result = runsResult(spec, runs, request)
  const { counts } = await sweepCarriers(spec, { ...request, counts: [3] }, here)
  expect(result.count).toEqual(counts[0])
  expect(result.partial).toBe(false)
  expect(result.intervals!.outputPerHour).toEqual(outputInterval(runs.map((run) => run.outputPerHour)))
  expect(result.intervals!.stations[1]!.shares.working.mean).toBeCloseTo(result.count.stations[1]!.shares.working, 12)
  expect(result.intervals!.zones.map((zone) => zone.name)).toEqual(spec.zones.map((zone) => zone.name))
})

test('fewer runs than asked for: partial; fewer than two: no intervals', () => {
  expect(runsResult(spec, runs.slice(0, 1), request)).toMatchObject({ partial: true, intervals: null })
  expect(runsResult(spec, [], request).count.replications).toBe(0)
})

test('a measure that some runs do not have is taken over those that have it', () => {
  const lapless = runs.map((run, index) => (index < 4 ? run : { ...run, lap: { ...run.lap, mean: null } }))
  expect(runsResult(spec, lapless, request).intervals!.lapSeconds!.n).toBe(4)
  expect(runsResult(spec, lapless.slice(3), request).intervals!.lapSeconds).toBeNull()
})

test('many runs tell the same, to the last bit, without keeping them; with threads and without', async () => {
  const told = runsResult(spec, runs, request)
  expect(await runMany(spec, request, here)).toEqual(told)
  expect(JSON.stringify(await runMany(spec, request, { seed: '4', workers: 2 }))).toBe(JSON.stringify(told))
})

test('stopped: plain means of what is in', async () => {
  const stop = new AbortController()
  const onProgress = ({ done }: { done: number }) => (done >= 3 ? stop.abort() : undefined)
  const result = await runMany(spec, { replications: 500, plan: null }, { ...here, signal: stop.signal, onProgress })
  expect(result).toMatchObject({ partial: true, replications: 500, count: { controlled: null } })
  expect(result.intervals!.outputPerHour.n).toBe(result.count.replications)
})

test('more than the memory holds is refused with a word, before anything runs', async () => {
  await expect(runMany(spec, { replications: 1e9, plan: null }, here)).rejects.toThrow(
    /^1000000000 replications of this line are more than the memory holds: ask for at most \d+$/,
  )
})
