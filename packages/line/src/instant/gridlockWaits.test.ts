/** Who waits for whom when a line stands still: operators, pushes and merges. Timelines worked out by hand from MODEL.md §3, §5, §6 and §10. */
import { describe, expect, test } from 'vitest'
import { chain, type GraphWish, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop, tell, timeline, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import { staffEvents, staffed } from '../../../../tests/helpers/staffed.ts'
import type { LineSpec } from '../spec.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

describe('two stations that hold one operator each, where the other needs two', () => {
  // S1 and S3 load with both operators; S5 only with op1, who is there from 1 to 11. c1 rests in Z3 at 2 and holds op0; c0 rests in Z1 at 4.
  const wish: Wish = {
    zones: 6,
    start: [0, 2, 4],
    move: [4, 4, 2, 4, 1, 4],
    clear: [3, 3, 2, 3, 1, 3],
    stations: [
      { at: 1, load: 5 },
      { at: 3, load: 5 },
      { at: 5, load: 10 },
    ],
    until: 60,
  }
  const staff = { operators: [{ stations: [0, 1] }, { stations: [0, 1, 2], start: 2 }], needed: { 0: 2, 1: 2 } }
  const broken: Wish = {
    ...wish,
    stops: [{ name: 'wear', on: { kind: 'station', index: 1 }, clock: 'calendar', after: 5, repair: 25 }],
  }

  test('while S3 is held nobody is sent there, but it keeps op0: op1 goes to S1, and neither can ever begin', () => {
    const spec = staffed(broken, staff)
    expect(staffEvents(spec)).toEqual([
      '1 send op1 to S5',
      '1 op1 at S5',
      '1 load begins S5 c2',
      '2 send op0 to S3',
      '2 op0 at S3',
      '5 stop wear',
      '11 load ends S5 c2',
      '11 op1 free',
      '11 send op1 to S1',
      '11 op1 at S1',
      // c2 leaves Z5 at 11 and stands behind c0 from 15 on; the repair at 30 would change nothing
      '15 standstill',
    ])
    const { result } = tell(spec)
    expect(result.end).toEqual({ reason: 'gridlock', atSeconds: 15, waits: [[0, 1]], cycle: [], unmanned: [1, 3] })
    // S1 waits for an operator from 4 on, to the end of the window
    expect(result.stations[0]!.seconds['waiting for operator']).toBe(56)
  })

  test('without the stop the station that has called longest gets both', () => {
    expect(staffEvents(staffed(wish, staff)).slice(6, 10)).toEqual([
      '11 op1 free',
      '11 send op1 to S3',
      '11 op1 at S3',
      '11 load begins S3 c1',
    ])
    expect(tell(staffed(wish, staff)).result.end.reason).toBe('end of window')
  })
})

describe('pushes', () => {
  /** The path out of a zone by hand, of a graph or a loop. */
  const byHand = (spec: LineSpec, from: number, station: number): LineSpec => ({
    ...spec,
    paths: spec.paths.map((path) => (path.from === from ? { ...path, manual: { kind: 'push', station } as const } : path)),
    operators: [{ name: 'anna', stations: spec.stations.map((_, s) => s), start: 0 }],
  })

  test('nobody is there to push: the zone of the carrier that could be pushed is told', () => {
    // c1 takes 10 s from Z1 to Z2, clear at 3; c0 rests in Z1 at 7, where anna is bound for ever: S1 needs two. From 10 on c1 waits for her push to Z3.
    const spec = byHand(
      smallLoop({
        zones: 4,
        start: [0, 1],
        move: [4, 10, 4, 4],
        clear: 3,
        stations: [
          { at: 1, load: 5 },
          { at: 3, unload: 2 },
        ],
        until: 30,
      }),
      2,
      1,
    )
    const stuck = { ...spec, stations: spec.stations.map((station, s) => ({ ...station, operatorsNeeded: s === 0 ? 2 : 1 })) }
    const { result } = tell(stuck)
    expect(result.end).toEqual({ reason: 'gridlock', atSeconds: 10, waits: [], cycle: [], unmanned: [1, 2] })
    // c1 in Z2 is done and not started
    expect(spent(result.zones[2]!.seconds)).toEqual({ claimed: 10, blocked: 20 })
    // with one needed she loads 7–12 and pushes from 12 to 16
    expect(timeline(spec, 'leave')).toContain('12 leave Z2 c1')
  })

  test('a push into a taken zone waits for that zone, not for anna: it is part of the circle', () => {
    // Z1 → Z2 → Z1 is full, the path back by hand; Z0 waits for Z1
    const graph = smallGraph({ zones: 3, start: [0, 1, 2], paths: chain(0, 1, 2, 1), move: 4, clear: 3, stations: [{ at: 0, load: 1 }] })
    expect(tell(byHand(graph, 2, 0)).result.end).toEqual({
      reason: 'gridlock',
      atSeconds: 0,
      waits: [
        [0, 1],
        [1, 2],
        [2, 1],
      ],
      cycle: [1, 2],
      unmanned: [],
    })
  })

  test('a pusher in a break is no gridlock, a pusher bound for ever is one, also in a break', () => {
    const wish: Wish = { zones: 3, start: [0], move: 4, clear: 3, stations: [{ at: 1, load: 5 }], breaks: [[3, 20]], until: 39 }
    // the push out of Z1 after the load 23–28
    expect(timeline(byHand(smallLoop(wish), 1, 0), 'leave')).toEqual([
      '0 leave Z0 c0',
      '28 leave Z1 c0',
      '32 leave Z2 c0',
      '36 leave Z0 c0',
    ])
    // c1 rests in Z0 at 7 behind c0, which waits for two: nobody is sent in the break, and anna alone would not do
    const spec = byHand(smallLoop({ ...wish, start: [0, 2] }), 1, 0)
    const stuck = { ...spec, stations: spec.stations.map((station) => ({ ...station, operatorsNeeded: 2 })) }
    // she is sent when the break ends, and only then is free no more
    expect(tell(stuck).result.end).toEqual({ reason: 'gridlock', atSeconds: 23, waits: [[0, 1]], cycle: [], unmanned: [1] })
  })
})

describe('a merge', () => {
  // store → Z0 → Z1, and the ring Z1 → Z2 → Z3 → Z1
  const wish: GraphWish = {
    zones: 4,
    start: { count: 4, rule: 'store' },
    paths: chain('store', 0, 1, 2, 3, 1),
    move: 4,
    clear: 3,
    until: 60,
  }

  test('fills its own exit: what waits longest comes in, until the ring is full', () => {
    expect(timeline(smallGraph(wish), 'leave', 'rest', 'standstill')).toEqual([
      '0 leave store to Z0 c0',
      '4 rest Z0 c0',
      '4 leave Z0 c0',
      // Z0 is clear at 7
      '7 leave store to Z0 c1',
      '8 rest Z1 c0',
      '8 leave Z1 c0',
      '11 rest Z0 c1',
      '11 leave Z0 c1',
      '12 rest Z2 c0',
      '12 leave Z2 c0',
      '14 leave store to Z0 c2',
      '15 rest Z1 c1',
      '15 leave Z1 c1',
      '16 rest Z3 c0',
      '18 rest Z0 c2',
      // Z1 is clear at 18: c0 has waited since 16
      '18 leave Z3 c0',
      '19 rest Z2 c1',
      '21 leave Z2 c1',
      '22 rest Z1 c0',
      '24 leave Z1 c0',
      '25 rest Z3 c1',
      // Z1 is clear at 27: c2 has waited since 18, c1 since 25
      '27 leave Z0 c2',
      '28 rest Z2 c0',
      '30 leave store to Z0 c3',
      '31 rest Z1 c2',
      '34 rest Z0 c3',
      '34 standstill',
    ])
    expect(tell(smallGraph(wish)).result.end).toEqual({
      reason: 'gridlock',
      atSeconds: 34,
      waits: [
        [0, 1],
        [1, 2],
        [2, 3],
        [3, 1],
      ],
      cycle: [1, 2, 3],
      unmanned: [],
    })
  })

  test('with right of way for the ring two carriers go round for ever, and the third waits', () => {
    const spec = smallGraph({ ...wish, merges: { 1: { kind: 'priority', from: [3, 0] } }, until: 300 })
    const { result } = tell(spec)
    expect(result.end.reason).toBe('end of window')
    expect(result.zones[0]!.movesOut).toBe(2)
  })

  test('a carrier that the ring lets out at once keeps it going', () => {
    // Z3 → store beside Z3 → Z1: the way out is the first
    const spec = smallGraph({ ...wish, paths: [...chain('store', 0, 1, 2, 3, 'store'), ...chain(3, 1)], until: 300 })
    expect(tell(spec).result.end.reason).toBe('end of window')
  })
})

test('too many carriers: the last free place is filled from the store, and nothing goes on', () => {
  // store → Z0 → Z1 → Z2 → Z1: once c1 and c0 stand in Z1 and Z2, each waits for the other
  const spec = smallGraph({ zones: 3, start: { count: 2, rule: 'store' }, paths: chain('store', 0, 1, 2, 1), move: 4, clear: 4, until: 60 })
  // c0: Z0 at 4, Z1 at 8, Z2 at 12. c1: out of the store at 8, Z0 at 12; Z1 is clear at 12, and c0, at rest in Z2 at 12, and c1, in Z0 at 12, want it: lower path
  expect(timeline(spec, 'rest', 'standstill')).toEqual([
    '4 rest Z0 c0',
    '8 rest Z1 c0',
    '12 rest Z0 c1',
    '12 rest Z2 c0',
    '16 rest Z1 c1',
    '16 standstill',
  ])
})
