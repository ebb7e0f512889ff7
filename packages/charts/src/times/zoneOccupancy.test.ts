import { type ByZoneState, ZONE_STATES, type ZoneState } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { zoneOccupancy } from './zoneOccupancy.ts'

const WINDOW = { per: 'shift', windowSeconds: 3_600 }

function zone(name: string, occupancyMean: number, of: Partial<Record<ZoneState, number>>) {
  return { name, occupancyMean, shares: Object.fromEntries(ZONE_STATES.map((state) => [state, of[state] ?? 0])) as ByZoneState }
}

const count = {
  carriers: 2,
  zones: [
    zone('Z1', 0.5, { blocked: 0.4, claimed: 0.1, free: 0.5 }),
    zone('Z2', 0.9, { working: 0.7, blocked: 0.05, other: 0.05, claimed: 0.1 }),
    zone('Z3', 0.6, { blocked: 0.55, claimed: 0.05 }),
  ],
}
const places = [
  { station: null, transfer: false },
  { station: 'Load', transfer: false },
  { station: null, transfer: true },
]

describe('rows', () => {
  const { rows, table } = zoneOccupancy(count, { ...WINDOW, places })
  test('three parts of each zone reach up to its occupancy', () => {
    const second = rows.filter((row) => row.zone === 'Z2 Load')
    expect(second.map(({ part }) => part)).toEqual(['worked on', 'waiting', 'coming in, or stopped'])
    expect(second.map(({ to }) => Math.round(Number(to)))).toEqual([70, 80, 90])
  })
  test('a stop may hide what the zone holds: no part is below 0', () => {
    const stopped = zoneOccupancy({ carriers: 1, zones: [zone('Z1', 0.2, { blocked: 0.2, stopped: 0.8 })] }, WINDOW).rows
    for (const { from, to } of stopped) expect(Number(to)).toBeGreaterThanOrEqual(Number(from))
  })
  test('the table says what stands there', () => {
    expect(table.rows.map(({ cells }) => cells)).toEqual([
      ['Z1', 'storage', '50', '0', '40', '10'],
      ['Z2', 'Load', '90', '70', '10', '10'],
      ['Z3', 'transfer', '60', '0', '55', '5'],
    ])
  })
})

describe('finding', () => {
  const say = (zones: typeof count.zones) => zoneOccupancy({ carriers: 2, zones }, { ...WINDOW, places }).finding.replaceAll('\u202f', ' ')
  test('names the longest wait and the station ahead, around the loop', () => {
    expect(say(count.zones)).toBe('With 2 carriers the longest waits are in Z3, on the way to Load: 55 % of the shift.')
  })
  test('a wait in the station itself', () => {
    expect(say([zone('Z1', 0, {}), zone('Z2', 0.9, { blocked: 0.5 }), zone('Z3', 0, {})])).toContain('the longest waits are in Z2, at Load')
  })
  test('no queues', () => {
    expect(say([zone('Z1', 0.1, { blocked: 0.04 }), zone('Z2', 0.9, { working: 0.9 }), zone('Z3', 0, {})])).toContain('there are no queues')
  })
})
