import { outputInterval } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { sweepCarriers } from '../sweep/sweepCarriers.ts'
import { replicate } from './replicate.ts'
import { runsResult } from './runsResult.ts'
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
