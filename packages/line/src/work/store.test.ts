/** The store by MODEL.md §1 and §10, by hand. Moves of 2 s and clears of 1 s given. */
import { describe, expect, test } from 'vitest'
import { chain, type GraphWish, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { tell, timeline } from '../../../../tests/helpers/smallLoop.ts'
import { startZones } from '../build/startPlaces.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

const GIVEN = { move: 2, clear: 1 }
const open: GraphWish = { zones: 2, start: { count: 3, rule: 'store' }, paths: chain('store', 0, 1, 'store'), ...GIVEN, until: 8 }

describe('an open line', () => {
  test('carriers leave the store in the order in which they came; more of them than zones', () => {
    // c0: Z0 2, Z1 4, store 6. Z0 is clear at 3: c1: Z0 5, Z1 7, store 9. Z0 is clear at 6: c2 (Z0 8); then c0, back since 6, at 9.
    const { result, lines } = tell(smallGraph(open))
    expect(lines.filter((line) => !line.includes('clear'))).toEqual([
      '0 leave store to Z0 c0',
      '2 rest Z0 c0',
      '2 leave Z0 c0',
      '3 leave store to Z0 c1',
      '4 rest Z1 c0',
      '4 leave Z1 to store c0',
      '5 rest Z0 c1',
      '5 leave Z0 c1',
      '6 rest store c0',
      '6 leave store to Z0 c2',
      '7 rest Z1 c1',
      '7 leave Z1 to store c1',
      '8 rest Z0 c2',
      '8 leave Z0 c2',
    ])
    // in the store, or on the way in: 2 for 0–3, 1 for 3–4, 2 for 4–6, 1 for 6–7, 2 for 7–8
    expect(result.storeMean).toBe((2 * 3 + 1 + 2 * 2 + 1 + 2) / 8)
    const inZones = result.zones.reduce((sum, zone) => sum + zone.occupancyMean, 0)
    expect(inZones + result.storeMean).toBe(3)
    // waiting in the store is waiting: c2 for 6 s, then it moves
    expect(spent(result.carriers[2]!.seconds)).toEqual({ moving: 2, 'waiting empty': 6 })
  })

  test('two lanes out of the store: by the first path that can start', () => {
    const paths = [...chain('store', 0, 2, 'store'), ...chain('store', 1, 2)]
    expect(timeline(smallGraph({ ...open, zones: 3, paths, until: 2 }), 'leave')).toEqual([
      '0 leave store to Z0 c0',
      '0 leave store to Z1 c1',
      '2 leave Z0 c0',
    ])
  })

  test('several carriers on one path into the store; a stop of the zone they left holds them all', () => {
    // The way into the store takes 10 s and clears after 1. c0 leaves Z0 at 0; c1, in Z1, comes to Z0 at 1 + 2 and leaves at 3.
    // Z0 is stopped from 5 to 8: both go on then, with 5 and 8 s left.
    const spec = smallGraph({
      zones: 2,
      start: [0, 1],
      paths: [
        { from: 1, to: 0 },
        { from: 0, to: 'store', move: 10 },
      ],
      ...GIVEN,
      stops: [{ name: 'jam', on: { kind: 'zone', index: 0 }, clock: 'calendar', after: 5, repair: 3 }],
      until: 20,
    })
    expect(timeline(spec, 'leave', 'rest')).toEqual([
      '0 leave Z0 to store c0',
      '1 leave Z1 c1',
      '3 rest Z0 c1',
      '3 leave Z0 to store c1',
      '13 rest store c0',
      '16 rest store c1',
    ])
  })
})

test('two that come at one instant leave in the order of their numbers', () => {
  // c1 and c0 come by two paths at 2; c0 goes first
  const paths = [...chain(0, 'store'), ...chain(1, 'store'), ...chain('store', 2, 3)]
  expect(timeline(smallGraph({ zones: 4, start: [1, 0], paths, ...GIVEN, until: 5 }), 'leave')).toEqual([
    '0 leave Z0 to store c1',
    '0 leave Z1 to store c0',
    '2 leave store to Z2 c0',
    '4 leave Z2 c0',
    '5 leave store to Z2 c1',
  ])
})

test('a start in the store needs a path out of it', () => {
  expect(startZones(smallGraph(open))).toEqual([-1, -1, -1])
  expect(() => startZones(smallGraph({ ...open, paths: chain(0, 1, 0) }))).toThrow('no path leads out of it')
})

test('a clear that is the draw of the move, on the way into the store', () => {
  // 0 → store takes 5 s, and Z0 is clear when the carrier is there; c1 comes from the store in 4 s
  const spec = smallGraph({
    zones: 1,
    start: [0, 'store'],
    paths: [
      { from: 0, to: 'store', move: 5 },
      { from: 'store', to: 0, move: 4 },
    ],
    clear: 3,
    until: 12,
  })
  const same = { ...spec, paths: spec.paths.map((path, p) => (p === 0 ? { ...path, clearSeconds: 'move' as const } : path)) }
  expect(timeline(same).slice(0, 5)).toEqual([
    '0 leave Z0 to store c0',
    '5 clear Z0',
    '5 rest store c0',
    '5 leave store to Z0 c1',
    '9 rest Z0 c1',
  ])
})
