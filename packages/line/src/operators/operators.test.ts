/** Timelines of named operators, worked out by hand from MODEL.md §6. */
import { describe, expect, test } from 'vitest'
import { smallLoop, tell, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import { staffEvents, staffed } from '../../../../tests/helpers/staffed.ts'
import type { WalkSpec } from '../spec.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

const GIVEN = { move: 4, clear: 3 }

describe('one operator for two stations', () => {
  // Z1 loads for 10 s, Z3 works for 20 s; 5 s between them
  const wish: Wish = {
    zones: 5,
    start: [0, 4],
    stations: [
      { at: 1, load: 10 },
      { at: 3, work: 20 },
    ],
    until: 60,
  }
  const walks: WalkSpec[] = [{ between: [0, 1], seconds: 5 }]

  test('walks when called, works, and stays where it is', () => {
    // c0 rests in Z1 at 4: the operator stands there, load to 14. c1 leaves Z0 when Z1 is clear, at 17, and is loaded 21–31. c0 rests in Z3 at 22 and calls;
    // the operator is free at 31, there at 36, and works to 56.
    const spec = staffed(wish, { operators: [{ stations: [0, 1] }], walks })
    expect(staffEvents(spec)).toEqual([
      '4 send op0 to S1',
      '4 op0 at S1',
      '4 load begins S1 c0',
      '14 load ends S1 c0',
      '14 op0 free',
      '21 send op0 to S1',
      '21 op0 at S1',
      '21 load begins S1 c1',
      '31 load ends S1 c1',
      '31 op0 free',
      '31 send op0 to S3',
      '36 op0 at S3',
      '36 work begins S3 c0',
      '56 work ends S3 c0',
      '56 op0 free',
    ])
    // S3: starved to 18, exchanging to 22, waiting for the operator to 36, working to 56, exchanging (c0 clear at 59, c1 from 59 on)
    expect(spent(tell(spec).result.stations[1]!.seconds)).toEqual({ working: 20, 'waiting for operator': 14, exchanging: 8, starved: 18 })
  })
})

describe('in a break', () => {
  test('walks stand still, and nobody is sent', () => {
    // called at 4, 6 s to walk, break 5–15: there at 20
    const wish: Wish = {
      zones: 4,
      start: [0],
      stations: [
        { at: 1, load: 3 },
        { at: 2, work: 1 },
      ],
      breaks: [[5, 10]],
      until: 30,
    }
    const spec = staffed(wish, { operators: [{ stations: [0, 1], start: 1 }], walks: [{ between: [0, 1], seconds: 6 }] })
    expect(staffEvents(spec)).toEqual([
      '4 send op0 to S1',
      '5 break begins',
      '15 break ends',
      '20 op0 at S1',
      '20 load begins S1 c0',
      '23 load ends S1 c0',
      '23 op0 free',
      // Z2 at 27
      '27 send op0 to S2',
    ])
    const { result } = tell(spec)
    // S1: exchanging 0–4, operator 4–5 and 15–20, break 5–15, working 20–23, exchanging to 26, starved
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 3, 'waiting for operator': 6, exchanging: 7, starved: 4, break: 10 })
  })
})

test('an operator who waits for himself: a station that needs two and has one stands still for ever, and the zone is told', () => {
  const spec = staffed(
    { zones: 3, start: [0], stations: [{ at: 1, load: 5 }], until: 30 },
    { operators: [{ stations: [0] }], needed: { 0: 2 } },
  )
  expect(tell(spec).result.end).toEqual({ reason: 'gridlock', atSeconds: 4, waits: [], cycle: [], unmanned: [1] })
})

test('an operator who covers no other station changes nothing against one of its own', () => {
  const wish: Wish = {
    zones: 6,
    start: [0, 3],
    stations: [
      { at: 1, load: 5, release: 1 },
      { at: 4, work: 7, unload: 2 },
    ],
    until: 200,
  }
  const { end: _, events: __, handlings: ___, ...own } = tell(smallLoop({ ...GIVEN, ...wish })).result
  const { end: _e, events: _v, handlings: _h, ...named } = tell(staffed(wish, { operators: [{ stations: [0] }, { stations: [1] }] })).result
  expect(named).toEqual(own)
})
