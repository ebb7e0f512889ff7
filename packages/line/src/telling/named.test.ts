import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { spent } from '../../../../tests/helpers/spent.ts'
import { simulate } from '../simulate.ts'
import { stationOf, zoneOf } from './named.ts'

// the empty carrier leaves at once: 3 s until Z0 is clear, back after 5 · 4 s
const run = simulate(smallLoop({ zones: 5, start: [0], move: 4, clear: 3, stations: [{ at: 0, work: 1 }], until: 10 }), {
  seed: 'a',
  replication: 0,
})

test('a station by name: what the run tells of it, and shares of the window', () => {
  expect(stationOf(run, 'S0')).toMatchObject(run.stations[0]!)
  expect(spent(stationOf(run, 'S0').shares)).toEqual({ exchanging: 0.3, starved: 0.7 })
})

test('a zone by name', () => {
  expect(zoneOf(run, 'Z0')).toMatchObject(run.zones[0]!)
  expect(spent(zoneOf(run, 'Z0').shares)).toEqual({ vacating: 0.3, free: 0.7 })
})

test('a name that is not there is told, with those that are', () => {
  expect(() => stationOf(run, 'S9')).toThrow('the run has no station called "S9"; there are "S0"')
  expect(() => zoneOf(run, 'S0')).toThrow('the run has no zone called "S0"; there are "Z0", "Z1", "Z2", "Z3", "Z4"')
})
