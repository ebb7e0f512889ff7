import { derivedTimes } from '@loopwright/line'
import { expect, test } from 'vitest'
import { driversOf, withMoves } from './drivers.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

test('what takes no time is left out; each stop and each share of a random mix is there', () => {
  expect(driversOf(stationLoop()).map(({ name }) => name)).toEqual([
    'A Load',
    'B Fit',
    'C Unload',
    'release by the operator',
    'moves (speed and ramps)',
    'given clear times',
    'jam: how long',
    'jam: how rare',
  ])
})

test('a factor of 1 changes nothing', () => {
  for (const { scaled } of driversOf(stationLoop())) expect(scaled(1)).toEqual(stationLoop())
})

test('moves of a drive take a factor longer, ramps and all', () => {
  const base = stationLoop()
  const driven = {
    ...base,
    carriers: { ...base.carriers, lengthMetres: 0.8 },
    paths: base.paths.map((path) => ({
      ...path,
      distanceMetres: 1.5,
      speedMetresPerSecond: 0.25,
      accelerationMetresPerSecondSquared: 0.4,
      moveSeconds: null,
      clearSeconds: null,
    })),
  }
  const [now, slower] = [derivedTimes(driven), derivedTimes(withMoves(driven, 1.05))]
  // times lie on the clock grid of 2⁻²⁰ s
  for (const [index, seconds] of now.move.entries()) expect(slower.move[index]).toBeCloseTo(seconds * 1.05, 5)
  for (const [index, seconds] of now.clear.entries()) expect(slower.clear[index]).toBeCloseTo(seconds * 1.05, 5)
})

test('walking, arrivals and receivers scale by what they are; given instants are no rate', () => {
  const base = stationLoop()
  const exponential = (mean: number) => ({ kind: 'exponential', mean }) as const
  const line = {
    ...base,
    operators: [{ name: 'Ann', stations: [0, 1], start: 0 }],
    walks: [{ between: [0, 1] as const, seconds: 4 }],
    supply: { name: 'supply', arrivals: { kind: 'every', seconds: exponential(60) }, queueLimit: 3 } as const,
    stations: base.stations.map((station) =>
      station.unload === null ? station : { ...station, receiver: { cycleSeconds: exponential(20), queue: 1 } },
    ),
  }
  const driver = (kind: string) => driversOf(line).find((each) => each.kind === kind)!
  expect(driver('walking').scaled(0.5).walks[0]!.seconds).toBe(2)
  expect(driver('arrivals').scaled(0.5).supply.arrivals).toEqual({ kind: 'every', seconds: exponential(30) })
  expect(driver('receiver').name).toBe('receiver at C Unload')
  expect(driver('receiver').scaled(0.5).stations[2]!.receiver!.cycleSeconds).toEqual(exponential(10))
  const list = { ...line, supply: { ...line.supply, arrivals: { kind: 'list', instants: [1, 2] } as const } }
  expect(driversOf(list).some(({ kind }) => kind === 'arrivals')).toBe(false)
})
