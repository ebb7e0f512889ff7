import { expect, test } from 'vitest'
import { carrierSeconds, stationSeconds, zoneSeconds } from './byState.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from './result.ts'

test.each([
  ['station', stationSeconds, STATION_STATES],
  ['zone', zoneSeconds, ZONE_STATES],
  ['carrier', carrierSeconds, CARRIER_STATES],
] as const)('each state of a %s has its place in the column, in the order of the states', (_, record, states) => {
  const column = Float64Array.from({ length: 3 + states.length }, (_, k) => k / 8)
  expect(Object.entries(record(column, 3))).toEqual(states.map((state, k) => [state, (3 + k) / 8]))
})
