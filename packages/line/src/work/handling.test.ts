/** Timelines of pushes and pulls, worked out by hand from MODEL.md §5. */
import { describe, expect, test } from 'vitest'
import { type GraphWish, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop, tell, timeline, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import type { LineSpec } from '../spec.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

/** Some paths by hand: path index to the station whose operator does it; their given time is theirs. */
function byHand(wish: Wish, manual: Readonly<Record<number, number>>, named = false): LineSpec {
  const spec = smallLoop(wish)
  const paths = spec.paths.map((path, p) =>
    manual[p] === undefined ? path : { ...path, manual: { kind: 'push', station: manual[p] } as const, clearSeconds: 'move' as const },
  )
  const operators = named ? [{ name: 'anna', stations: spec.stations.map((_, s) => s), start: 0 }] : []
  return { ...spec, paths, operators }
}
const words = (spec: LineSpec): string[] => timeline(spec).filter((line) => !/ (clear|take|off) /.test(line))

// Z1 loads for 5 s, Z3 unloads for 2 s
const LOOP: Wish = {
  zones: 4,
  start: [0],
  move: 4,
  clear: 3,
  stations: [
    { at: 1, load: 5 },
    { at: 3, unload: 2 },
  ],
  until: 20,
}

describe('a push out of a station by its own operator', () => {
  test('starts when the carrier is done; the station is handling until it has arrived', () => {
    const spec = byHand(LOOP, { 1: 0 })
    expect(words(spec)).toEqual([
      '0 leave Z0 c0',
      '4 rest Z1 c0',
      '4 send own operator 0 to S1',
      '4 own operator 0 at S1',
      '4 load begins S1 c0',
      '9 load ends S1 c0',
      '9 own operator 0 free',
      '9 send own operator 0 to S1',
      '9 own operator 0 at S1',
      '9 leave Z1 c0',
      '13 own operator 0 free',
      '13 rest Z2 c0',
      '13 leave Z2 c0',
      '17 rest Z3 c0',
      '17 unload begins S3 c0',
      '19 unload ends S3 c0',
      '19 leave Z3 c0',
    ])
    const { result } = tell(spec)
    // exchanging 0–4, working 4–9, handling 9–13, starved
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 5, handling: 4, exchanging: 4, starved: 7 })
    expect(result.handlings).toEqual([{ operator: 'S1', count: 1, seconds: 4 }])
  })

  test('the operator cannot work meanwhile: the next carrier waits for the end of the push', () => {
    // a push of 10 s with its own clear of 3 s: c1 comes to rest in Z1 before the push of c0 ends
    const spec = byHand({ ...LOOP, start: [0, 3], move: [4, 10, 4, 4] }, { 1: 0 })
    const quick = {
      ...spec,
      paths: spec.paths.map((path, p) => (p === 1 ? { ...path, clearSeconds: { kind: 'constant', value: 3 } as const } : path)),
    }
    // c0: load 4–9, push 9–19; Z1 clear at 12: c1 (in Z0 from 4) rests in Z1 at 16, waits for the operator to 19
    expect(words(quick).filter((line) => (/ (load|leave) .*/.test(line) && line.includes('Z1')) || line.includes('load'))).toEqual([
      '4 load begins S1 c0',
      '9 load ends S1 c0',
      '9 leave Z1 c0',
      '19 load begins S1 c1',
    ])
    // at 16–19 handling comes first in the order of states
    expect(tell(quick).result.stations[0]!.seconds).toMatchObject({ working: 6, handling: 10, 'waiting for operator': 0 })
  })
})

describe('a named operator', () => {
  test('is called when the move could start but for the operator, and ranks by the time the carrier has waited; then stations first', () => {
    // path 2 (Z2 → Z3) by the operator of S1, who also unloads at S3. c0 from Z0, c1 from Z2 at 0: done at time 0 and pushed at once, 0–4.
    const spec = byHand({ ...LOOP, start: [0, 2] }, { 2: 0 }, true)
    expect(words(spec).slice(0, 12)).toEqual([
      '0 send anna to S1',
      '0 anna at S1',
      '0 leave Z0 c0',
      '0 leave Z2 c1',
      '4 rest Z1 c0',
      '4 anna free',
      '4 rest Z3 c1',
      // both are at rest; c1 is empty and has no duty in Z3
      '4 send anna to S1',
      '4 anna at S1',
      '4 load begins S1 c0',
      '4 leave Z3 c1',
      '8 rest Z0 c1',
    ])
  })

  test('a push stands still in a break', () => {
    const spec = byHand({ ...LOOP, breaks: [[10, 6]], until: 30 }, { 1: 0 }, true)
    // push 9–10, break 10–16, 3 s left: at rest in Z2 at 19
    expect(timeline(spec, 'rest')).toContain('19 rest Z2 c0')
  })

  test('the next zone is claimed when the operator sets off', () => {
    // anna stands at S3, 5 s away: called at 9 for the push out of Z1, there at 14, in Z2 at 18
    const spec = byHand(LOOP, { 1: 0 })
    const far: LineSpec = {
      ...spec,
      operators: [
        { name: 'ben', stations: [0], start: 0 },
        { name: 'anna', stations: [1], start: 1 },
      ],
      paths: spec.paths.map((path, p) => (p === 1 ? { ...path, manual: { kind: 'pull', station: 1 } as const } : path)),
      walks: [{ between: [0, 1], seconds: 5 }],
    }
    // the path names S3, whose operator stands there: no walk; S3 is handling 9–13
    const { result, lines } = tell(far)
    expect(lines).toContain('13 rest Z2 c0')
    expect(result.stations[1]!.seconds.handling).toBe(4)
    expect(result.handlings).toEqual([
      { operator: 'ben', count: 0, seconds: 0 },
      { operator: 'anna', count: 1, seconds: 4 },
    ])
  })
})

describe('a push where there are other ways', () => {
  /** The first path is a push by S0, whose operator is its own. */
  const graph = (wish: GraphWish): LineSpec => {
    const spec = smallGraph(wish)
    return { ...spec, paths: spec.paths.map((path, p) => (p > 0 ? path : { ...path, manual: { kind: 'push', station: 0 } as const })) }
  }

  test('into the store: the next carrier waits for the operator, who has not arrived with the one before', () => {
    // c0 is pushed 0–6, Z0 is clear at 2; c1 is in Z0 at 3 and is pushed 6–12
    const spec = graph({
      zones: 3,
      start: [0, 1],
      paths: [
        { from: 0, to: 'store', move: 6, clear: 2 },
        { from: 1, to: 0, move: 1, clear: 1 },
      ],
      stations: [{ at: 2, load: 1, name: 'S0' }],
      until: 12,
    })
    expect(words(spec)).toEqual([
      '0 send own operator 0 to S0',
      '0 own operator 0 at S0',
      '0 leave Z0 to store c0',
      '2 leave Z1 c1',
      '3 rest Z0 c1',
      '6 own operator 0 free',
      '6 rest store c0',
      '6 send own operator 0 to S0',
      '6 own operator 0 at S0',
      '6 leave Z0 to store c1',
      '12 own operator 0 free',
      '12 rest store c1',
      '12 standstill',
    ])
    expect(tell(spec).result.handlings).toEqual([{ operator: 'S0', count: 2, seconds: 12 }])
  })

  test.each([
    ['works', []],
    ['is on a break', [[1, 28]]],
  ] as const)('while its operator %s, a carrier that takes the first way that can start takes one with a drive', (_, breaks) => {
    // c1 is loaded in Z0 from 2 on; c0 is in the store at 5
    const spec = graph({
      zones: 5,
      start: [2, 3],
      move: 2,
      clear: 1,
      paths: [
        { from: 'store', to: 1 },
        { from: 'store', to: 4 },
        { from: 3, to: 0 },
        { from: 2, to: 'store', move: 5 },
      ],
      stations: [{ at: 0, load: 20, name: 'S0' }],
      breaks,
      until: 20,
    })
    expect(timeline(spec, 'leave')).toEqual(['0 leave Z3 c1', '0 leave Z2 to store c0', '5 leave store to Z4 c0'])
  })
})
