import { marksOf } from '../../../../tests/helpers/marksOf.ts'
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
  const figure = zoneOccupancy(count, { ...WINDOW, places })
  const { table } = figure
  test('three parts of each zone reach up to its occupancy', () => {
    const second = marksOf(figure, 'area').filter(({ tip }) => tip!.startsWith('Z2 Load'))
    expect(second.map(({ ink }) => ink)).toEqual(['work', 'wait', 'move'])
    expect(second.map(({ x }) => Math.round(Number(x[1])))).toEqual([70, 80, 90])
  })
  test('a stop may hide what the zone holds: no part is below 0', () => {
    const stopped = zoneOccupancy({ carriers: 1, zones: [zone('Z1', 0.2, { blocked: 0.2, stopped: 0.8 })] }, WINDOW)
    for (const { x } of marksOf(stopped, 'area')) expect(Number(x[1])).toBeGreaterThanOrEqual(Number(x[0]))
  })
  test('the table says what stands there', () => {
    expect(table.rows.map(({ cells }) => cells)).toEqual([
      ['Z1', 'storage', '50', '0', '40', '10'],
      ['Z2', 'Load', '90', '70', '10', '10'],
      ['Z3', 'transfer', '60', '0', '55', '5'],
    ])
  })
})

test('another count is marked where its bars end', () => {
  const ghost = { carriers: 3, zones: count.zones.map((each) => ({ ...each, occupancyMean: 0.95 })) }
  const both = zoneOccupancy(count, { ...WINDOW, places, ghost })
  expect(marksOf(both, 'rule').map(({ x }) => x[0])).toEqual([95, 95, 95])
  expect(both.readLine).toContain('Strokes: where the bars end with 3 carriers.')
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
