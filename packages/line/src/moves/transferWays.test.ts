/** Transfers with several ways in or out, by hand from MODEL.md §3 and §4. Lift 2 s, lower 1.5 s; given: moves of 4 s, clears of 3 s. */
import { describe, expect, test } from 'vitest'
import { chain, type GraphWish, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { tell, timeline } from '../../../../tests/helpers/smallLoop.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

const GIVEN = { move: 4, clear: 3 }
const T = { lift: 2, lower: 1.5 }
const NO_CLEAR = ['leave', 'look', 'brake', 'rest', 'turn', 'turned']

describe('ways in of different positions', () => {
  // Z0 → Z2 needs low, Z1 → Z2 high; on by Z2 → Z3 → Z4, low
  const wish: GraphWish = {
    zones: 5,
    start: [0, 1],
    paths: [{ from: 0, to: 2 }, { from: 1, to: 2, in: 'high' }, ...chain(2, 3, 4)],
    transfers: { 2: T },
    ...GIVEN,
    until: 17.5,
  }

  test('it rests as it stands; who wins it in the wrong position waits at rest in its own zone while it turns', () => {
    const { result, lines } = tell(smallGraph(wish))
    expect(lines.filter((line) => /Z2|Z1/.test(line))).toEqual([
      '4 rest Z2 c0',
      '4 leave Z2 c0',
      '7 clear Z2',
      '7 turn Z2 in',
      '9 turned Z2 in',
      '9 leave Z1 c1',
      '12 clear Z1',
      '13 rest Z2 c1',
      '13 turn Z2 out',
      '14.5 turned Z2 out',
      '14.5 leave Z2 c1',
      '17.5 clear Z2',
    ])
    // Z2: claimed 4 + 2 + 4, changing under c1 1.5, vacating 3 + 3; set aside it holds nobody: occupancy 0–4 and 9–14.5
    expect(spent(result.zones[2]!.seconds)).toEqual({ claimed: 10, other: 1.5, vacating: 6 })
    expect(result.zones[2]!.occupancyMean).toBe((4 + 5.5) / 17.5)
    // c1 waits in Z1 until 9, moves 4, waits while it changes, moves again
    expect(spent(result.carriers[1]!.seconds)).toEqual({ moving: 4 + 3, 'waiting empty': 9 + 1.5 })
  })

  test('a stop of the transfer holds that change; one that is on keeps it from being won', () => {
    const jam = (after: number) =>
      timeline(
        smallGraph({ ...wish, stops: [{ name: 'jam', on: { kind: 'zone', index: 2 }, clock: 'calendar', after, repair: 3 }], until: 14 }),
      ).filter((line) => /(turn|turned) Z2 in|leave Z1/.test(line))
    expect(jam(8)).toEqual(['7 turn Z2 in', '12 turned Z2 in', '12 leave Z1 c1'])
    // stopped at 6.5 with 0.5 s of the clear left: clear at 10
    expect(jam(6.5)).toEqual(['10 turn Z2 in', '12 turned Z2 in', '12 leave Z1 c1'])
  })

  test('in the right position a carrier passes at speed; in the wrong one it brakes, and then the change runs', () => {
    const lane = [...chain(0, 1, 2)]
    const into = (first: 'low' | 'high'): GraphWish => ({
      zones: 5,
      start: [0],
      paths: [{ from: 4, to: 2, in: first }, { ...lane[0]! }, { ...lane[1]!, in: 'low' }, ...chain(2, 3), { from: 3, to: 2, in: 'high' }],
      transfers: { 2: T },
      until: 9,
    })
    expect(timeline(smallGraph(into('low')), ...NO_CLEAR)).toEqual([
      '0 leave Z0 c0',
      '5 look Z1 c0',
      '5 leave Z1 c0 at speed',
      '9 look Z2 c0',
      '9 leave Z2 c0 at speed',
    ])
    expect(timeline(smallGraph(into('high')), ...NO_CLEAR)).toEqual([
      '0 leave Z0 c0',
      '5 look Z1 c0',
      '5 brake Z1 c0',
      '6 rest Z1 c0',
      '6 turn Z2 in',
      '7.5 turned Z2 in',
      '7.5 leave Z1 c0',
    ])
  })
})

describe('ways out of different positions', () => {
  // Z0 → Z1; Z1 → Z2 low, Z1 → Z3 high. c1 stands in Z2, which leads to Z4 with a clear that the test chooses.
  const wish = (clear: number, divert: 'first' | 'free'): GraphWish => ({
    zones: 5,
    start: [0, 2],
    paths: [
      { from: 0, to: 1 },
      { from: 1, to: 2 },
      { from: 1, to: 3, out: 'high' },
      { from: 2, to: 4, clear },
    ],
    transfers: { 1: T },
    ...GIVEN,
    diverts: { 1: divert },
    until: 8,
  })
  const ofC0 = (spec: GraphWish) => timeline(smallGraph(spec), ...NO_CLEAR).filter((line) => !line.includes('c1') && !line.includes('Z0'))

  test('first: it turns for that path, free or not', () => {
    expect(ofC0(wish(5, 'first'))).toEqual(['4 rest Z1 c0', '5 leave Z1 to Z2 c0'])
  })

  test('free: fixed once, when the carrier is done and all that ends then has ended', () => {
    // Z2 free at 5: too late, at 4 the way was fixed to Z3
    expect(ofC0(wish(5, 'free'))).toEqual(['4 rest Z1 c0', '4 turn Z1 out', '6 turned Z1 out', '6 leave Z1 to Z3 c0'])
    // Z2 free at 4 itself: low, no change
    expect(ofC0(wish(4, 'free'))).toEqual(['4 rest Z1 c0', '4 leave Z1 to Z2 c0', '8 rest Z2 c0'])
  })

  test('free: a carrier always stops there, also where nothing has to change', () => {
    const { move: _, clear: __, ...drive } = wish(0, 'free')
    // M(rest, rest) = 6, not a look at 5
    expect(ofC0(drive)).toEqual(['6 rest Z1 c0', '6 leave Z1 to Z2 c0'])
  })

  test('back to the position of the way in after the way that needed another', () => {
    // Z1 is left high at 6, clear 9, low 10.5
    const spec = smallGraph({ ...wish(5, 'free'), until: 11 })
    expect(timeline(spec).filter((line) => /back|clear Z1/.test(line))).toEqual(['9 clear Z1', '9 turn Z1 back', '10.5 turned Z1 back'])
  })

  test('at time 0 a carrier in it has its way fixed, and it stands as that needs', () => {
    const spec = smallGraph({ ...wish(3, 'free'), start: [1, 2], until: 3 })
    expect(timeline(spec, ...NO_CLEAR)).toEqual(['0 leave Z1 to Z3 c0', '0 leave Z2 c1', '3 turn Z1 back'])
  })
})

describe('exit-clear, with several ways out', () => {
  // Z0 → Z1 exit-clear → Z2 low or Z3 (position of the test); c1 stands in Z2 for ever, if at all
  const wish = (out: 'low' | 'high', blocked: boolean): GraphWish => ({
    zones: 4,
    start: blocked ? [0, 2] : [0],
    paths: [
      { from: 0, to: 1 },
      { from: 1, to: 2 },
      { from: 1, to: 3, out },
    ],
    transfers: { 1: { ...T, exitClear: true } },
    diverts: { 1: 'free' },
    until: 8,
  })

  test('the way out is fixed at the claim: the lowest path whose zone is free; the carrier may pass', () => {
    const { result, lines } = tell(smallGraph(wish('low', true)))
    expect(lines.filter((line) => !line.includes('clear'))).toEqual(['0 leave Z0 c0', '5 look Z1 c0', '5 leave Z1 to Z3 c0 at speed'])
    // Z3 is claimed from 0 on
    expect(spent(result.zones[3]!.seconds)).toEqual({ claimed: 8 })
    expect(timeline(smallGraph(wish('high', false)), 'leave')).toEqual(['0 leave Z0 c0', '5 leave Z1 to Z2 c0 at speed'])
  })

  test('a way that needs another position stops it', () => {
    expect(timeline(smallGraph(wish('high', true)), 'rest', 'turn', 'leave')).toEqual([
      '0 leave Z0 c0',
      '6 rest Z1 c0',
      '6 turn Z1 out',
      '8 leave Z1 to Z3 c0',
    ])
  })

  test('with the way to a full zone it is not claimed', () => {
    const first = { ...wish('low', true), diverts: {} }
    const { result, lines } = tell(smallGraph(first))
    expect(lines).toEqual(['0 standstill'])
    expect(result.end).toMatchObject({ reason: 'gridlock', atSeconds: 0, waits: [[0, 2]], cycle: [] })
  })

  test('an exit in the wrong position turns when the carrier stands before it', () => {
    // Z1 exit-clear → Z2, a transfer that rests low (first way in, from Z4) and is needed high
    const spec: GraphWish = {
      zones: 5,
      start: [0],
      paths: [{ from: 4, to: 2 }, { from: 0, to: 1 }, { from: 1, to: 2, in: 'high' }, ...chain(2, 3)],
      transfers: { 1: { ...T, exitClear: true }, 2: T },
      ...GIVEN,
      until: 12,
    }
    expect(timeline(smallGraph(spec), ...NO_CLEAR)).toEqual([
      '0 leave Z0 c0',
      '4 rest Z1 c0',
      '4 turn Z2 in',
      '6 turned Z2 in',
      '6 leave Z1 c0',
      '10 rest Z2 c0',
      '10 turn Z2 out',
      '11.5 turned Z2 out',
      '11.5 leave Z2 c0',
    ])
  })

  test('two in a row, each with its own ways: all that is behind is claimed at once', () => {
    // Z1 → Z2 → Z3 or Z4, Z1 and Z2 exit-clear; Z3 holds c1: Z4 is set aside at 0
    const spec: GraphWish = {
      zones: 5,
      start: [0, 3],
      paths: [...chain(0, 1, 2, 3), ...chain(2, 4)],
      transfers: { 1: { ...T, exitClear: true }, 2: { ...T, exitClear: true } },
      diverts: { 2: 'free' },
      ...GIVEN,
      until: 12,
    }
    const { result, lines } = tell(smallGraph(spec))
    expect(lines.filter((line) => line.includes('leave'))).toEqual(['0 leave Z0 c0', '4 leave Z1 c0', '8 leave Z2 to Z4 c0'])
    expect(spent(result.zones[4]!.seconds)).toEqual({ claimed: 12 })
  })

  test('a claim through it ranks by the general order, beside the merge of the zone behind', () => {
    // Z0 → Z1 exit-clear → Z3, Z2 → Z3 with priority for Z2. Both wait since 0: c1's path is 0, c0's is 1.
    const paths = [{ from: 0, to: 1 }, { from: 2, to: 3 }, ...chain(1, 3, 4)]
    const spec: GraphWish = {
      zones: 5,
      start: [2, 0],
      paths,
      transfers: { 1: { ...T, exitClear: true } },
      merges: { 3: { kind: 'priority', from: [2] } },
      ...GIVEN,
      until: 8,
    }
    expect(timeline(smallGraph(spec), 'leave')).toEqual(['0 leave Z0 c1', '4 leave Z1 c1', '8 leave Z3 c1'])
  })
})
