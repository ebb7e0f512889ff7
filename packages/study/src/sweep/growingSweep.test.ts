import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { growingSweep } from './growingSweep.ts'
import { sweepCarriers } from './sweepCarriers.ts'
import type { SweepResult } from './sweepResult.ts'

const line = stationLoop()
const request = { counts: [1, 3, 2], plan: 100 }

test('each stage has the numbers of a sweep of as many replications, but for its answer', async () => {
  const told: SweepResult[] = []
  await growingSweep({ seed: 'g' }).sweep(line, { ...request, stages: [2, 5] }, { onStage: (result) => told.push(result) })
  expect(told.map(({ replications }) => replications)).toEqual([2, 5])
  for (const result of told) {
    const same = await sweepCarriers(line, { ...request, replications: result.replications }, { seed: 'g', workers: 0 })
    expect(result).toEqual({ ...same, answer: null })
  }
})

test('what was run is told at once when the line is asked for again, a stop by silence', async () => {
  const growing = growingSweep({ seed: 'g' })
  await growing.sweep(line, { ...request, stages: [4] }, {})
  const told: [number, boolean][] = []
  await growing.sweep(line, { ...request, stages: [2, 4] }, { onStage: ({ replications }, last) => told.push([replications, last]) })
  expect(told).toEqual([[4, true]])
  await growing.sweep(line, { ...request, stages: [500] }, { onStage: () => told.push([500, true]), signal: AbortSignal.abort() })
  expect(told).toHaveLength(1)
})

test('what cannot be swept is refused as a sweep refuses it', async () => {
  await expect(growingSweep({ seed: 'g' }).sweep(line, { counts: [], plan: null, stages: [2] }, {})).rejects.toThrow('at least one number')
  await expect(growingSweep({ seed: 'g' }).sweep(line, { ...request, stages: [0] }, {})).rejects.toThrow('at least 1 replication, not 0')
})
