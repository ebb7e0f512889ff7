import type { LineSpec } from '@loopwright/line'
import { expect, test } from 'vitest'
import { lineHasChance } from './lineChance.ts'
import { replicate } from './replicate.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const spec = stationLoop()
const constant = { kind: 'constant', value: 20 } as const
const certain = (change: Partial<LineSpec> = {}): LineSpec =>
  stationLoop({
    stations: spec.stations.map((station) => ({ ...station, work: station.work === null ? null : [{ task: 1, seconds: [constant] }] })),
    breakdowns: [],
    ...change,
  })

test('constant times and no stops: nothing is left to chance, and every run is the same', async () => {
  expect(lineHasChance(certain())).toBe(false)
  const runs = await replicate(certain(), { replications: 5 }, { seed: '1', workers: 0 })
  expect(new Set(runs.map((run) => run.output)).size).toBe(1)
})

test.each<[string, LineSpec]>([
  ['a time with a spread', spec],
  ['a stop at random', certain({ breakdowns: spec.breakdowns })],
  ['a mix that is drawn', certain({ variants: ['one', 'other'], mix: { kind: 'random', shares: [1, 1] } })],
  ['an inspection that rejects some', certain({ inspections: [{ task: 1, rejectProbability: 0.1 }] })],
  [
    'a move that varies',
    certain({ paths: spec.paths.map((path, at) => (at === 0 ? { ...path, moveSeconds: { kind: 'uniform', min: 1, max: 2 } } : path)) }),
  ],
])('%s is chance', (_, line) => expect(lineHasChance(line)).toBe(true))

test('a pattern, a variant of share 0, and a probability of 0 or 1 are none', () => {
  expect(lineHasChance(certain({ variants: ['one', 'other'], mix: { kind: 'random', shares: [1, 0] } }))).toBe(false)
  expect(lineHasChance(certain({ mix: { kind: 'pattern', sequence: [0] } }))).toBe(false)
  expect(lineHasChance(certain({ inspections: [{ task: 1, rejectProbability: 1 }] }))).toBe(false)
})
