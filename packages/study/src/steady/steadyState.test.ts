import { law, lawTerms } from '@loopwright/line'
import { expect, test } from 'vitest'
import { smallLoop } from '../smallLoop.ts'
import { steadyState, threadTraces, tracesHere } from './steadyState.ts'

const base = smallLoop()
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
  const result = await steadyState(constant, { seed: 's', replications: 2, intervals: 60 }, tracesHere)
  const terms = lawTerms(law(constant), 4)
  expect(result.status).toBe('ok')
  expect(result.intervalSeconds).toBe(120)
  // one unit at the edge of a window of 60 intervals of five units
  expect(Math.abs(result.outputPerHour!.mean - terms.rate * 3600)).toBeLessThan(0.01 * terms.rate * 3600)
  expect(result.enoughSeconds).toBeGreaterThanOrEqual(11 * result.cutSeconds!)
})

test('products in line are the time average that the run itself tells', async () => {
  const result = await steadyState(base, { seed: 's', replications: 2, intervals: 60 }, tracesHere)
  const long = { ...base, breaks: [], window: { warmupSeconds: result.cutSeconds!, endSeconds: result.runSeconds } }
  const runs = await tracesHere(long, 's', 2)
  expect(result.productsInLine!.mean).toBeCloseTo((runs[0]!.run.productsInLineMean + runs[1]!.run.productsInLineMean) / 2, 9)
  const perHour = runs.map(({ run }) => run.outputPerHour)
  expect(result.outputPerHour!.mean).toBeCloseTo((perHour[0]! + perHour[1]!) / 2, 9)
})

test('too few intervals: doubled with the same seeds; out of products: no figure', async () => {
  const short = await steadyState(constant, { seed: 's', replications: 2, intervals: 30 }, tracesHere)
  expect(short.intervals).toBe(60)
  const listed = { ...constant, mix: { kind: 'list', sequence: [0, 0, 0] } as const }
  const ended = await steadyState(listed, { seed: 's', replications: 2, intervals: 60 }, tracesHere)
  expect(ended).toMatchObject({ status: 'ended early', cutSeconds: null, outputPerHour: null })
  await expect(steadyState(constant, { seed: 's', replications: 1 }, tracesHere)).rejects.toThrow('at least 2')
})

test('threads change nothing', async () => {
  const request = { seed: 's', replications: 2, intervals: 60 }
  expect(await steadyState(base, request, threadTraces({ workers: 2 }))).toEqual(await steadyState(base, request, tracesHere))
})
