import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { simulate } from '../simulate.ts'
import type { LineSpec } from '../spec.ts'
import { type StopSource, stopSources, stopsOf } from './stopSources.ts'
import { STOP_BEGIN, Trace } from './trace.ts'

const every = (value: number) => ({ kind: 'constant', value }) as const
const plain = smallLoop({
  zones: 4,
  start: [0],
  move: 4,
  clear: 3,
  stations: [
    { at: 1, load: 1 },
    { at: 2, work: 1 },
    { at: 3, unload: 1 },
  ],
  stops: [{ name: 'jam', on: { kind: 'zone', index: 2 }, clock: 'calendar', after: 11, repair: 2 }],
  until: 60,
})
const line: LineSpec = {
  ...plain,
  stations: plain.stations.map((station, index) =>
    index === 1 ? station : { ...station, safetyStop: { probability: 1, resetSeconds: every(5) } },
  ),
}

test('breakdowns in their order, then safety stops by station', () => {
  const [jam, ...others] = stopSources(line)
  expect(jam).toMatchObject({ kind: 'breakdown', breakdown: line.breakdowns[0] })
  expect(others).toEqual([
    { kind: 'safety stop', name: 'safety stop S1', station: 0 },
    { kind: 'safety stop', name: 'safety stop S3', station: 2 },
  ])
})

test('a run counts them in this order, and its trace numbers them so', () => {
  const trace = new Trace()
  const run = simulate(line, { seed: '1', replication: 0, trace })
  const begun = (place: number): number => [...trace.kinds].filter((kind, k) => kind === STOP_BEGIN && trace.places[k] === place).length
  const counted = (source: StopSource): number =>
    source.kind === 'breakdown'
      ? run.breakdowns.find(({ name }) => name === source.name)!.count
      : run.safetyStops.find(({ name }) => name === line.stations[source.station]!.name)!.count
  const sources = stopSources(line)
  expect(sources.map((_, place) => begun(place))).toEqual(sources.map(counted))
  expect(new Set(sources.map(counted)).size).toBe(3)
  expect(stopsOf(run).map(({ name, count }) => [name, count])).toEqual([
    ...sources.map((source) => [source.name, counted(source)]),
    ['break', 0],
  ])
})
