/** Timelines of receivers, worked out by hand from MODEL.md §8. */
import { expect, test } from 'vitest'
import { smallLoop, tell, timeline, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import type { LineSpec } from '../spec.ts'

// two carriers on four zones, load in Z1 (3 s), unload in Z3 (2 s); move 4, clear 3
const LOOP: Wish = {
  zones: 4,
  start: [0, 3],
  move: 4,
  clear: 3,
  stations: [
    { at: 1, load: 3 },
    { at: 3, unload: 2 },
  ],
}
function received(wish: Wish, cycle: number, queue: number): LineSpec {
  const spec = smallLoop(wish)
  const receiver = { cycleSeconds: { kind: 'constant', value: cycle } as const, queue }
  return { ...spec, stations: spec.stations.map((station, s) => (s === 1 ? { ...station, receiver } : station)) }
}
const words = (spec: LineSpec): string[] => timeline(spec).filter((line) => / (unload|receiver) /.test(line))

test('with no place before it the next unload waits until the receiver has ended', () => {
  // c0: load 4–7, Z3 at 15, unload to 17, receiver 17–47. c1 left Z3 at 0, Z0 at 4, starts in when Z1 is clear at 10: 14, load to 17, Z2 at 21;
  // Z3 is clear at 20 (c0 left at 17): Z3 at 25, waits to 47, unload to 49
  const spec = received({ ...LOOP, until: 56 }, 30, 0)
  expect(words(spec)).toEqual([
    '15 unload begins S3 c0',
    '17 unload ends S3 c0',
    '17 receiver of S3 begins',
    '47 receiver of S3 ends',
    '47 unload begins S3 c1',
    '49 unload ends S3 c1',
    '49 receiver of S3 begins',
  ])
  expect(tell(spec).result.stations[1]!.seconds['waiting for receiver']).toBe(47 - 25)
})

test('a place before it takes a product while it works', () => {
  const spec = received({ ...LOOP, until: 60 }, 30, 1)
  expect(words(spec)).toEqual([
    '15 unload begins S3 c0',
    '17 unload ends S3 c0',
    '17 receiver of S3 begins',
    '25 unload begins S3 c1',
    '27 unload ends S3 c1',
    '47 receiver of S3 ends',
    '47 receiver of S3 begins',
    // c0: Z0 at 21, load in Z1 25–28, Z2 32, Z3 36: one works, one waits until 47, when the place is free: unload to 49
    '47 unload begins S3 c0',
    '49 unload ends S3 c0',
  ])
})

test('it works on in a break, and a cycle of 0 s is always ready', () => {
  const spec = received({ ...LOOP, breaks: [[18, 20]], until: 60 }, 30, 0)
  expect(words(spec)).toContain('47 receiver of S3 ends')
  const { events: _, ...ready } = tell(received({ ...LOOP, until: 300 }, 0, 0)).result
  const { events: __, ...always } = tell(smallLoop({ ...LOOP, until: 300 })).result
  expect(ready).toEqual(always)
})

test('a line that waits for its receiver does not stand still', () => {
  expect(tell(received({ ...LOOP, until: 900 }, 800, 0)).result.end.reason).toBe('end of window')
})
