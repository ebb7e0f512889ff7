import { expect, test } from 'vitest'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from './result.ts'

test('the states, in the order of MODEL.md §11', () => {
  expect(STATION_STATES).toEqual([
    'working',
    'handling',
    'waiting for operator',
    'waiting for product',
    'waiting for receiver',
    'blocked',
    'exchanging',
    'starved',
    'stopped',
    'break',
  ])
  expect(ZONE_STATES).toEqual(['free', 'claimed', 'working', 'blocked', 'other', 'vacating', 'stopped'])
  expect(CARRIER_STATES).toEqual(['moving', 'worked on', 'waiting with product', 'waiting empty'])
})
