import type { Scenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { movedStations } from './movedStations.ts'

const scenario = {
  name: 'Line',
  line: {
    zones: [
      { name: 'Z1', transfer: null },
      { name: 'Z2', transfer: null },
      { name: 'Z3', transfer: {} },
    ],
    stations: [
      { name: 'A', zone: 0 },
      { name: 'B', zone: 1 },
    ],
  },
} as unknown as Scenario
const zonesOf = (moved: Scenario) => moved.line.stations.map(({ zone }) => zone)

test('stations change places; the scenario given stays as it is', () => {
  expect(zonesOf(movedStations(scenario, { A: 'Z2', B: 'Z1' }))).toEqual([1, 0])
  expect(zonesOf(scenario)).toEqual([0, 1])
})

test('what cannot be is refused by name', () => {
  expect(() => movedStations(scenario, { C: 'Z1' })).toThrow('no station called "C"; there are A, B')
  expect(() => movedStations(scenario, { A: 'Z9' })).toThrow('no zone called "Z9"')
  expect(() => movedStations(scenario, { A: 'Z3' })).toThrow('Z3 is a transfer: A cannot stand there')
  expect(() => movedStations(scenario, { A: 'Z2' })).toThrow('A and B would both stand in Z2')
})
