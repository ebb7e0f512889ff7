import type { LineSpec } from '@loopwright/line'
import { law } from '@loopwright/line/bounds'
import { expect, test } from 'vitest'
import { findDrivers } from './findDrivers.ts'
import { TIME_KINDS } from './drivers.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const constant = (value: number) => ({ kind: 'constant', value }) as const

/** Constant times, nothing breaks, a window in which one unit is 0.02 % of the output: an elasticity is known to 0.002. */
function steady(workSeconds: number, change: Partial<LineSpec> = {}): LineSpec {
  const base = stationLoop()
  const stations = base.stations.map((station) =>
    station.work === null ? station : { ...station, work: [{ task: 1, seconds: [constant(workSeconds)] }] },
  )
  return { ...base, stations, breakdowns: [], breaks: [], window: { warmupSeconds: 3600, endSeconds: 123_600 }, ...change }
}
const request = { replications: 2 }
const here = { seed: 'd', workers: 0 }

test('one limit active: the slowest exchange of constant times, in closed form', { tags: 'long' }, async () => {
  const line = steady(20, { carriers: { ...stationLoop().carriers, count: 4 } })
  const result = await findDrivers(line, request, here)
  const [first] = result.drivers
  expect(first!.name).toBe('B Fit')
  // MODEL.md §12: T = move 2 + work 20 + release 1 + clear 1 = 24 s; (S/T)/(1 − (0.05·S/T)²), here S the work alone
  expect(law(line).exchangeSeconds).toBe(24)
  expect(first!.elasticity.mean).toBeCloseTo(20 / 24 / (1 - ((0.05 * 20) / 24) ** 2), 2)
  expect(first!.elasticity.status).toBe('no spread')
  expect(result.limits).toEqual([0])
  expect(result.drivers.find(({ name }) => name === 'A Load')!.elasticity.mean).toBe(0)
  expect(result.oneCarrierMore!.status).toBe('identical in every replication')
})

test('everything that takes time sums to 1, whatever limits: stations, carriers or room', { tags: 'long' }, async () => {
  for (const count of [1, 4, 7]) {
    const result = await findDrivers(steady(20, { carriers: { ...stationLoop().carriers, count } }), request, here)
    const sum = result.drivers.filter(({ kind }) => TIME_KINDS.includes(kind)).reduce((total, { elasticity }) => total + elasticity.mean, 0)
    // up to the step's second order, and to one unit for each of the six kinds
    expect(Math.abs(sum - 1)).toBeLessThan(0.012)
  }
})

test('too few carriers: one more brings what the law says', async () => {
  const result = await findDrivers(steady(20, { carriers: { ...stationLoop().carriers, count: 1 } }), request, here)
  expect(result.lawTerms!.regime).toBe('carrier-limited')
  expect(result.oneCarrierLess).toBeNull()
  const lap = law(steady(20)).lapSeconds
  const exchange = 24
  const gain = 120_000 / Math.max(lap / 2, exchange) - 120_000 / lap
  expect(Math.abs(result.oneCarrierMore!.mean - gain)).toBeLessThan(2)
})

test('stops and mix: rarer stops gain, the share of long work costs, and a scaled share is a share', { tags: 'long' }, async () => {
  const base = stationLoop()
  const two = {
    ...base,
    variants: ['short', 'long'],
    mix: { kind: 'random', shares: [3, 1] } as const,
    stations: base.stations.map((station) => ({
      ...station,
      ...Object.fromEntries(
        (['unload', 'load', 'work'] as const).map((duty) => [
          duty,
          station[duty]?.map((task) => ({ ...task, seconds: [task.seconds[0]!, duty === 'work' ? constant(60) : task.seconds[0]!] })) ??
            null,
        ]),
      ),
    })),
  }
  const result = await findDrivers(two, { replications: 20 }, { seed: 'm', workers: 0 })
  const of = (name: string) => result.drivers.find((each) => each.name === name)!.elasticity
  expect(of('share of long').high).toBeLessThan(0)
  expect(of('share of short').low).toBeGreaterThan(0)
  expect(of('jam: how long').mean).toBeGreaterThan(0)
  // later stops move to other products: little is shown in so few worlds, but no loss either
  expect(of('jam: how rare').high).toBeGreaterThan(0)
  expect(result.explanation!.stations.map(({ station }) => station)).toEqual([0, 1, 2])
})

test('what counts most is shown to count, stops as well as times; what takes no time is none of it', async () => {
  const base = stationLoop()
  // one breakdown that holds the working station for half of the time
  const breakdowns = base.breakdowns.map((source) => ({ ...source, timeToFailureSeconds: constant(300), repairSeconds: constant(300) }))
  const result = await findDrivers({ ...base, breakdowns }, { replications: 12 }, { seed: 's', workers: 0 })
  const counts = result.limits.map((index) => result.drivers[index]!)
  expect(counts.map(({ kind }) => kind)).toContain('repair')
  for (const { elasticity } of counts) expect(elasticity.low).toBeGreaterThan(0)
  const [most] = counts
  for (const { elasticity, name } of result.drivers)
    if (elasticity.low > most!.elasticity.low) expect(counts.map((one) => one.name)).toContain(name)
})

test('a line that makes nothing, and a single replication, are refused', async () => {
  const dead = steady(20, { window: { warmupSeconds: 0, endSeconds: 1 } })
  await expect(findDrivers(dead, request, here)).rejects.toThrow('makes nothing')
  await expect(findDrivers(steady(20), { replications: 1 }, { seed: 'd', workers: 0 })).rejects.toThrow('at least 2')
})
