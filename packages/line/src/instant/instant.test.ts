/** The order of things within one instant: MODEL.md §1, worked out by hand. */
import { expect, test } from 'vitest'
import { smallLoop, tell, timeline } from '../../../../tests/helpers/smallLoop.ts'

test('a chain of moves of 0 s: each start first ends what it ends in no time, and work goes before moves', () => {
  // Moves and clears 0 s. Z3: unload (no task) and load 2 s. At 0 only c2 can move; it arrives and its load starts before c1 follows. Then c1, then c0.
  // At 2 c2 goes on to Z0; of c1 (waits since 0) and c2 (since 2) only c1 can start; then c0, which has waited longer than c2.
  const { result, lines } = tell(
    smallLoop({ zones: 4, start: [0, 1, 2], odd: true, move: 0, clear: 0, stations: [{ at: 3, unload: true, load: 2 }], until: 6 }),
  )
  expect(lines.filter((line) => /^[02] /.test(line))).toEqual([
    '0 leave Z2 c2',
    '0 rest Z3 c2',
    '0 clear Z2',
    '0 load begins S3 c2',
    '0 take p0 c2',
    '0 leave Z1 c1',
    '0 rest Z2 c1',
    '0 clear Z1',
    '0 leave Z0 c0',
    '0 rest Z1 c0',
    '0 clear Z0',
    '2 load ends S3 c2',
    '2 leave Z3 c2',
    '2 rest Z0 c2',
    '2 clear Z3',
    '2 leave Z2 c1',
    '2 rest Z3 c1',
    '2 clear Z2',
    '2 load begins S3 c1',
    '2 take p1 c1',
    '2 leave Z1 c0',
    '2 rest Z2 c0',
    '2 clear Z1',
    '2 leave Z0 c2',
    '2 rest Z1 c2',
    '2 clear Z0',
  ])
  // the first load lies at 0, before the window; c2 is back at 6: output at 6, inside the window
  expect([result.loads, result.output]).toEqual([3, 1])
  // all three carriers are always somewhere; Z3 works for the whole window
  expect(result.stations[0]!.seconds.working).toBe(6)
})

test('moves of 0 s with a duty of 0 s at every visit go round as far as the others let them', () => {
  // One carrier, moves 0 s but for the path out of Z2 (1 s): loads at 1 in Z0 in 0 s, then Z1, Z2 at once; leaves Z2 at 1, is in Z0 at 2, and so on
  const spec = smallLoop({
    zones: 3,
    start: [2],
    move: [0, 0, 1],
    clear: [0, 0, 1],
    stations: [{ at: 0, unload: true, load: true }],
    until: 3,
  })
  expect(timeline(spec, 'leave', 'take', 'off')).toEqual([
    '0 leave Z2 c0',
    '1 take p0 c0',
    '1 leave Z0 c0',
    '1 leave Z1 c0',
    '1 leave Z2 c0',
    '2 off p0 c0',
    '2 take p1 c0',
    '2 leave Z0 c0',
    '2 leave Z1 c0',
    '2 leave Z2 c0',
    '3 off p1 c0',
    '3 take p2 c0',
    '3 leave Z0 c0',
    '3 leave Z1 c0',
    '3 leave Z2 c0',
  ])
})

test('what ends now ends before anything starts: a zone that turns free at the end of the work behind it is entered at once', () => {
  // move 4, clear 4. c1 leaves Z1 at 0, is in Z2 at 4 and goes on; Z2 is clear at 8. c0 leaves Z0 at 4, in Z1 at 8: loads 0 s, leaves at 8.
  const spec = smallLoop({ zones: 5, start: [0, 1], move: 4, clear: 4, stations: [{ at: 1, load: true }], until: 8 })
  expect(timeline(spec, 'leave', 'load')).toEqual([
    '0 leave Z1 c1',
    '4 leave Z0 c0',
    '4 leave Z2 c1',
    '8 load begins S1 c0',
    '8 load ends S1 c0',
    '8 leave Z1 c0',
    '8 leave Z3 c1',
  ])
})

test('braking begins only when nothing more can start', () => {
  // Drive: c1 leaves Z2 at 0 and works nowhere; c0 leaves Z0 at 0, looks at Z1 at 5, at Z2 at 9. c1 looks at Z3 at 5, Z4 at 9, always ahead.
  // A third carrier behind, c2 in Z5: Z0 is clear at 2.5, c2 looks at Z0 at 7.5: Z1 was left at 5, clear 6.5: passes.
  const { lines } = tell(smallLoop({ zones: 6, start: [0, 2, 5], until: 9 }))
  expect(lines.some((line) => line.includes('brake'))).toBe(false)
  // one instant, two looks, one after the other: c0 can pass only because c1, which looks at the same instant, passes first with a clear of 0 s
  const tight = smallLoop({ zones: 6, start: [0, 1], move: [null], clear: 0, until: 5 })
  expect(timeline(tight, 'leave', 'look', 'brake')).toEqual([
    '0 leave Z1 c1',
    '0 leave Z0 c0',
    '5 look Z1 c0',
    '5 look Z2 c1',
    '5 leave Z2 c1 at speed',
    '5 leave Z1 c0 at speed',
  ])
})
