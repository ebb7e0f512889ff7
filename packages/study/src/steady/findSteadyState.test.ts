import { law, lawTerms } from '@loopwright/line/bounds'
import { expect, test } from 'vitest'
import { replicate } from '../runs/replicate.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { findSteadyState } from './findSteadyState.ts'

const base = stationLoop()
const here = { seed: 's', workers: 0 }
const constant = {
  ...base,
  carriers: { ...base.carriers, count: 4 },
  breakdowns: [],
  breaks: [],
  stations: base.stations.map((station) =>
    station.work === null ? station : { ...station, work: [{ task: 1, seconds: [{ kind: 'constant', value: 20 } as const] }] },
  ),
}

test('constant times: a short start, then the rate of the law', async () => {
  const result = await findSteadyState(constant, { replications: 2, intervals: 60 }, here)
  const terms = lawTerms(law(constant), 4)
  expect(result.status).toBe('ok')
  expect(result.intervalSeconds).toBe(120)
  // one unit at the edge of a window of 60 intervals of five units
  expect(Math.abs(result.outputPerHour!.mean - terms.rate * 3600)).toBeLessThan(0.01 * terms.rate * 3600)
  expect(result.enoughSeconds).toBeGreaterThanOrEqual(11 * result.cutSeconds!)
})

test('products in line are the time average that the run itself tells', async () => {
  const result = await findSteadyState(base, { replications: 2, intervals: 60 }, here)
  const long = { ...base, breaks: [], window: { warmupSeconds: result.cutSeconds!, endSeconds: result.runSeconds } }
  const runs = await replicate(long, { replications: 2 }, here)
  expect(result.productsInLine!.mean).toBeCloseTo((runs[0]!.productsInLineMean + runs[1]!.productsInLineMean) / 2, 9)
  const perHour = runs.map((run) => run.outputPerHour)
  expect(result.outputPerHour!.mean).toBeCloseTo((perHour[0]! + perHour[1]!) / 2, 9)
})

test('too few intervals: doubled with the same seeds; out of products: no figure', async () => {
  const short = await findSteadyState(constant, { replications: 2, intervals: 30 }, here)
  expect(short.intervals).toBe(60)
  const listed = { ...constant, mix: { kind: 'list', sequence: [0, 0, 0] } as const }
  const ended = await findSteadyState(listed, { replications: 2, intervals: 60 }, here)
  expect(ended).toMatchObject({ status: 'ended early', outOfProducts: 2, gridlocks: 0, cutSeconds: null, outputPerHour: null })
  expect(ended.why).toContain('list of products ran out')
  await expect(findSteadyState(constant, { replications: 1 }, here)).rejects.toThrow('at least 2')
})

test('threads change nothing', async () => {
  const request = { replications: 2, intervals: 60 }
  expect(await findSteadyState(base, request, { seed: 's', workers: 2 })).toEqual(await findSteadyState(base, request, here))
})
