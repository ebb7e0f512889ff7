import { law } from '@loopwright/line/bounds'
import { expect, test } from 'vitest'
import { findLosses } from './findLosses.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const constant = (value: number) => ({ kind: 'constant', value }) as const
const request = { replications: 10 }
const here = { seed: 'w', workers: 0 }

test('the steps sum to the gap between ideal and forecast; alone and interaction too', async () => {
  const { causes, gap, forecast, ideal, interaction, bestCarriers } = await findLosses(stationLoop(), request, here)
  const sum = (of: 'step' | 'alone') => causes.reduce((total, cause) => total + cause[of].mean, 0)
  expect(sum('step')).toBeCloseTo(gap!.mean, 9)
  expect(ideal!.mean - forecast!.mean).toBeCloseTo(gap!.mean, 9)
  expect(sum('alone') + interaction!.mean).toBeCloseTo(gap!.mean, 9)
  for (const name of ['jam', 'breaks', 'exchange at B']) expect(causes.find((cause) => cause.name === name)!.step.mean).toBeGreaterThan(0)
  expect(bestCarriers).toBeGreaterThanOrEqual(2)
})

test('a cause that a line does not have loses exactly nothing', async () => {
  const base = stationLoop()
  const empty = {
    ...base,
    carriers: { ...base.carriers, count: 4 },
    breakdowns: [],
    breaks: [],
    stations: base.stations.map((station) =>
      station.work === null ? station : { ...station, work: [{ task: 1, seconds: [constant(20)] }] },
    ),
  }
  const { causes, interaction } = await findLosses(empty, request, here)
  for (const { kind, step, alone } of causes) {
    if (kind === 'exchange') continue
    expect(step).toMatchObject({ status: 'identical in every replication', mean: 0 })
    expect(alone).toMatchObject({ status: 'identical in every replication', mean: 0 })
  }
  expect(interaction!.mean).toBe(0)
})

test('without its exchange the slowest station of constant times works without a pause, as far as the next limit lets it', async () => {
  const base = stationLoop()
  const line = {
    ...base,
    carriers: { ...base.carriers, count: 4 },
    breakdowns: [],
    breaks: [],
    stations: base.stations.map((station) =>
      station.work === null ? station : { ...station, work: [{ task: 1, seconds: [constant(40)] }] },
    ),
  }
  // MODEL.md §12: 3600 s over work 40 + release 1 + move 2 + clear 1; without move and clear over 41 s
  expect(law(line).exchangeSeconds).toBe(44)
  const { forecast, ideal } = await findLosses(line, { replications: 2 }, { seed: 'w', workers: 0 })
  expect(Math.abs(forecast!.mean - 3600 / 44)).toBeLessThanOrEqual(1)
  expect(Math.abs(ideal!.mean - 3600 / 41)).toBeLessThanOrEqual(1)
})

test('too few carriers: their shortage is a loss', async () => {
  const base = stationLoop()
  const { causes, bestCarriers } = await findLosses({ ...base, carriers: { ...base.carriers, count: 1 } }, request, here)
  expect(bestCarriers).toBeGreaterThan(1)
  expect(causes.find(({ kind }) => kind === 'carriers')!.alone.low).toBeGreaterThan(0)
})
