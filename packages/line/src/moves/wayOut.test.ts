/** Ways out by MODEL.md §3, by hand. Moves of 2 s and clears of 1 s given. */
import { describe, expect, test } from 'vitest'
import { chain, type GraphWish, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { timeline } from '../../../../tests/helpers/smallLoop.ts'

const GIVEN = { move: 2, clear: 1 }
const leaves = (wish: GraphWish) => timeline(smallGraph(wish), 'leave')

describe('conditions', () => {
  test('a path whose conditions hold goes before one without, whatever its index', () => {
    // Z0 → Z1 for all, Z0 → Z2 for empty ones; both go on to Z3 and back: the empty carrier never sees Z1
    const paths = [...chain(0, 1, 3, 0), { from: 0, to: 2, takes: { load: 'empty' as const } }, ...chain(2, 3)]
    expect(leaves({ zones: 4, start: [0], paths, ...GIVEN, until: 8 })).toEqual([
      '0 leave Z0 to Z2 c0',
      '2 leave Z2 c0',
      '4 leave Z3 c0',
      '6 leave Z0 to Z2 c0',
      '8 leave Z2 c0',
    ])
  })

  test('by variant: product 0 is of variant 0, product 1 of variant 1', () => {
    // loaded in Z0 (1 s), taken off in Z3 (1 s); variant 1 goes by Z2
    const paths = [...chain(0, 1, 3, 0), { from: 0, to: 2, takes: { variants: [1] } }, ...chain(2, 3)]
    const wish: GraphWish = {
      zones: 4,
      start: [3],
      paths,
      ...GIVEN,
      variants: 2,
      mix: { kind: 'pattern', sequence: [0, 1] },
      stations: [
        { at: 0, load: 1 },
        { at: 3, unload: 1 },
      ],
      until: 15,
    }
    // 0 empty out of Z3; at Z0 2, loaded 3; Z1 5; Z3 7, off 8; Z0 10, loaded 11; Z2 13; Z3 15
    expect(leaves(wish)).toEqual([
      '0 leave Z3 c0',
      '3 leave Z0 to Z1 c0',
      '5 leave Z1 c0',
      '8 leave Z3 c0',
      '11 leave Z0 to Z2 c0',
      '13 leave Z2 c0',
    ])
  })

  test('for a station: a spur is entered once', () => {
    // Z1 has a station that works on what was loaded in Z0 once; Z0 → Z1 → Z0 is the spur, Z0 → Z2 → Z0 the loop; unloaded never
    const paths = [...chain(0, 2, 0, 1, 0)].map((path) => (path.to === 1 ? { ...path, takes: { forStation: 1 } } : path))
    const stations = [
      { at: 0, load: 1 },
      { at: 1, work: 5 },
    ]
    // at time 0 it is empty in Z0 and nothing is left in Z1 for it: by Z2. Back at 4, loaded 5; Z1 at 7, worked 12; Z0 at 14, by Z2 for ever
    expect(leaves({ zones: 3, start: [0], paths, ...GIVEN, stations, until: 20 })).toEqual([
      '0 leave Z0 to Z2 c0',
      '2 leave Z2 c0',
      '5 leave Z0 to Z1 c0',
      '12 leave Z1 c0',
      '14 leave Z0 to Z2 c0',
      '16 leave Z2 c0',
      '18 leave Z0 to Z2 c0',
      '20 leave Z2 c0',
    ])
  })

  test('a carrier without a way out stays; by the drive it stops there', () => {
    const paths = [...chain(0, 1), { from: 1, to: 2, takes: { load: 'loaded' as const } }, ...chain(2, 0)]
    // M(rest, rest) = 6: no look
    expect(timeline(smallGraph({ zones: 3, start: [0], paths, until: 20 }))).toEqual([
      '0 leave Z0 c0',
      '2.5 clear Z0',
      '6 rest Z1 c0',
      '6 standstill',
    ])
  })
})

describe('divert', () => {
  // Z0 leads to Z1 and Z2; from both to Z3 and back. Carriers 0 and 1 stand in Z3 and Z0.
  const paths = [...chain(0, 1, 3, 0), ...chain(0, 2, 3)]

  test('first: the lower path index, and waits for it', () => {
    // c1 to Z1 at 0, at Z1 2; held there by c0? c0 leaves Z3 when Z0 is clear at 1: in Z0 at 3, Z1 clear at 3
    expect(leaves({ zones: 4, start: [3, 0], paths, ...GIVEN, until: 3 })).toEqual([
      '0 leave Z0 to Z1 c1',
      '1 leave Z3 c0',
      '2 leave Z1 c1',
      '3 leave Z0 to Z1 c0',
    ])
    // with work of 9 s in Z1 (loading) c0 waits in Z0 until Z1 is clear: 2 + 9 + 1
    const stations = [{ at: 1, load: 9 }]
    expect(leaves({ zones: 4, start: [3, 0], paths, ...GIVEN, stations, until: 12 })).toEqual([
      '0 leave Z0 to Z1 c1',
      '1 leave Z3 c0',
      '11 leave Z1 c1',
      '12 leave Z0 to Z1 c0',
    ])
  })

  test('free: the first that can start', () => {
    const stations = [{ at: 1, load: 9 }]
    expect(leaves({ zones: 4, start: [3, 0], paths, ...GIVEN, stations, diverts: { 0: 'free' }, until: 5 })).toEqual([
      '0 leave Z0 to Z1 c1',
      '1 leave Z3 c0',
      '3 leave Z0 to Z2 c0',
      '5 leave Z2 c0',
    ])
  })

  test('alternate: in turn, and waits for its turn', () => {
    const stations = [{ at: 2, load: 9 }]
    // c1 takes Z1 at 0, c0 takes Z2 at 3 and loads 5 to 14; c1: Z1 2, Z3 4, Z0 6, Z1 again at 6, Z3 10, Z0 12: its turn is Z2, clear at 15
    const wish: GraphWish = { zones: 4, start: [3, 0], paths, ...GIVEN, stations, diverts: { 0: 'alternate' }, until: 15 }
    expect(leaves(wish)).toEqual([
      '0 leave Z0 to Z1 c1',
      '1 leave Z3 c0',
      '2 leave Z1 c1',
      '3 leave Z0 to Z2 c0',
      '4 leave Z3 c1',
      '6 leave Z0 to Z1 c1',
      '8 leave Z1 c1',
      '10 leave Z3 c1',
      '14 leave Z2 c0',
      '15 leave Z0 to Z2 c1',
    ])
  })
})
