/** Timelines of moves that a stop holds, worked out by hand from MODEL.md §7; more of them, with drives and several stops, are in stop.test.ts. */
import { expect, test } from 'vitest'
import { smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { timeline } from '../../../../tests/helpers/smallLoop.ts'

test('every carrier on the way into the store stands still while the zone that it left is held, and so does its clear', () => {
  // c0 leaves Z1 at 2 (in the store at 6), c1 at 4 (at 8; Z1 clear at 5). Z1 is down from 4.5 to 6.5: all three come 2 s later.
  const spec = smallGraph({
    zones: 2,
    start: { count: 2, rule: 'store' },
    paths: [
      { from: 'store', to: 0, move: 1 },
      { from: 0, to: 1, move: 1, clear: 1 },
      { from: 1, to: 'store', move: 4, clear: 1 },
    ],
    stops: [{ name: 'jam', on: { kind: 'zone', index: 1 }, clock: 'calendar', after: 4.5, repair: 2 }],
    until: 10,
  })
  const seen = timeline(spec, 'leave', 'clear', 'rest')
  expect(seen.filter((line) => /leave Z1|clear Z1|rest store/.test(line))).toEqual([
    '2 leave Z1 to store c0',
    '3 clear Z1',
    '4 leave Z1 to store c1',
    '7 clear Z1',
    '8 rest store c0',
    '10 rest store c1',
    '10 leave Z1 to store c0',
  ])
})
