/** Timelines of moves, worked out by hand from MODEL.md §3. The drive of smallLoop: M = 4, 5, 6 s; clear 1.5 s at speed, 2.5 s from rest; braking takes 1 s. */
import { describe, expect, test } from 'vitest'
import { smallLoop, tell, timeline } from '../../../../tests/helpers/smallLoop.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

describe('passing at speed', () => {
  test('a carrier alone starts from rest and goes on at speed', () => {
    // look at Z1: 0 + M(rest, speed) = 5; then M(speed, speed) = 4: 9, 13. Clear: 0 + 2.5, 5 + 1.5, 9 + 1.5.
    expect(timeline(smallLoop({ zones: 4, start: [0], until: 10.5 }))).toEqual([
      '0 leave Z0 c0',
      '2.5 clear Z0',
      '5 look Z1 c0',
      '5 leave Z1 c0 at speed',
      '6.5 clear Z1',
      '9 look Z2 c0',
      '9 leave Z2 c0 at speed',
      '10.5 clear Z2',
    ])
  })

  test('a pass that fails: the carrier brakes, the zone stays claimed until it is at rest', () => {
    // c1 has to load in Z2: M(rest, rest) = 6; load 20: 6 to 26. Z1 is clear at 2.5: c0 starts, looks at 2.5 + 5 = 7.5, is at rest at 2.5 + 6 = 8.5.
    // c1 starts at 26, Z2 is clear at 28.5, and c0 starts from rest.
    const { result, lines } = tell(smallLoop({ zones: 4, start: [0, 1], stations: [{ at: 2, load: 20 }], until: 28.5 }))
    expect(lines).toEqual([
      '0 leave Z1 c1',
      '2.5 clear Z1',
      '2.5 leave Z0 c0',
      '5 clear Z0',
      '6 rest Z2 c1',
      '6 load begins S2 c1',
      '6 take p0 c1',
      '7.5 look Z1 c0',
      '7.5 brake Z1 c0',
      '8.5 rest Z1 c0',
      '26 load ends S2 c1',
      '26 leave Z2 c1',
      '28.5 clear Z2',
      '28.5 leave Z1 c0',
    ])
    // Z1: vacating to 2.5, claimed to 8.5, blocked to 28.5: free, claimed, working, blocked, other, vacating, stopped
    expect(spent(result.zones[1]!.seconds)).toEqual({ claimed: 6, blocked: 20, vacating: 2.5 })
    // c0: waits to 2.5, moves to 8.5 (braking is moving), waits to 28.5; c1: moves to 6, worked on to 26, moves to 28.5
    expect(result.carriers.map(({ seconds }) => spent(seconds))).toEqual([
      { moving: 6, 'waiting empty': 22.5 },
      { moving: 8.5, 'worked on': 20 },
    ])
  })

  test('a zone that turns free exactly at the look is passed into', () => {
    // c1: rest in Z3 at 6, load 0.5, leaves at 6.5, clear at 9. c0: looks at Z1 at 5, at Z2 at 9: Z3 turns free at this very instant.
    // It has to load in Z3 too: 9 + M(speed, rest) = 14.
    const spec = smallLoop({ zones: 5, start: [0, 2], stations: [{ at: 3, load: 0.5 }], until: 14 })
    expect(timeline(spec, 'leave', 'look', 'brake', 'rest')).toEqual([
      '0 leave Z0 c0',
      '0 leave Z2 c1',
      '5 look Z1 c0',
      '5 leave Z1 c0 at speed',
      '6 rest Z3 c1',
      '6.5 leave Z3 c1',
      '9 look Z2 c0',
      '9 leave Z2 c0 at speed',
      '11.5 look Z4 c1',
      '11.5 leave Z4 c1 at speed',
      '14 rest Z3 c0',
    ])
  })

  test('a zone freed while the carrier brakes helps only when it is at rest', () => {
    // As before with a load of 1 s: Z3 is clear at 9.5. c0 fails at 9, is at rest at 5 + M(speed, rest) = 10, starts from rest: in Z3 at 16.
    const spec = smallLoop({ zones: 5, start: [0, 2], stations: [{ at: 3, load: 1 }], until: 16 })
    const lines = timeline(spec)
    expect(lines.filter((line) => Number(line.split(' ')[0]) >= 9 && !line.includes('c1') && !line.includes('Z4'))).toEqual([
      '9 look Z2 c0',
      '9 brake Z2 c0',
      '9.5 clear Z3',
      '10 rest Z2 c0',
      '10 leave Z2 c0',
      '12.5 clear Z2',
      '16 rest Z3 c0',
      '16 load begins S3 c0',
      '16 take p1 c0',
    ])
  })

  test('without a ramp a look that fails is rest at once', () => {
    // no acceleration: M = 4 always, clear = 1.5. c1: rest in Z2 at 4, load to 14. c0: starts at 1.5, looks at 5.5.
    const spec = smallLoop({ zones: 4, start: [0, 1], drive: { a: null }, stations: [{ at: 2, load: 10 }], until: 15.5 })
    expect(timeline(spec, 'leave', 'look', 'rest')).toEqual([
      '0 leave Z1 c1',
      '1.5 leave Z0 c0',
      '4 rest Z2 c1',
      '5.5 look Z1 c0',
      '5.5 rest Z1 c0',
      '14 leave Z2 c1',
      '15.5 leave Z1 c0',
    ])
  })

  test('a zone too short for the ramps: rest to rest takes 2·√(d/a), clear √(2e/a) + ε', () => {
    // d = 0.5, x = 1: M(rest, rest) = 2·√1 = 2; e = 1.25 − 1 = 0.25: C(rest) = √1 + 0.5 = 1.5. Both stations stop the carrier.
    const spec = smallLoop({
      zones: 3,
      start: [0],
      drive: { distance: 0.5, length: 1.25 },
      odd: true,
      stations: [
        { at: 1, load: 3 },
        { at: 2, work: 5 },
      ],
      until: 7,
    })
    expect(timeline(spec, 'leave', 'rest', 'clear')).toEqual([
      '0 leave Z0 c0',
      '1.5 clear Z0',
      '2 rest Z1 c0',
      '5 leave Z1 c0',
      '6.5 clear Z1',
      '7 rest Z2 c0',
    ])
  })
})

describe('train release', () => {
  test('only the stagger separates the carriers', () => {
    // δ = 0.25. Starts from rest at 0, 0.25, 0.5; looks 5 s later each, when the zone ahead has been left 0.25 s ago and is just clear.
    const spec = smallLoop({ zones: 6, start: [0, 1, 2], train: true, stagger: 0.25, until: 5.5 })
    expect(timeline(spec)).toEqual([
      '0 leave Z2 c2',
      '0.25 clear Z2',
      '0.25 leave Z1 c1',
      '0.5 clear Z1',
      '0.5 leave Z0 c0',
      '0.75 clear Z0',
      '5 look Z3 c2',
      '5 leave Z3 c2 at speed',
      '5.25 look Z2 c1',
      '5.25 clear Z3',
      '5.25 leave Z2 c1 at speed',
      '5.5 look Z1 c0',
      '5.5 clear Z2',
      '5.5 leave Z1 c0 at speed',
    ])
    expect(timeline(smallLoop({ zones: 6, start: [0, 1, 2], until: 5 }), 'leave').slice(0, 3)).toEqual([
      '0 leave Z2 c2',
      '2.5 leave Z1 c1',
      '5 leave Z0 c0',
    ])
  })

  test('a zone with a transfer is left by single release all the same', () => {
    // Z1 is a transfer that changes nothing; its sensor is at the stop point: e = 2, C(speed) = 2 + 0.5 = 2.5.
    const spec = smallLoop({
      zones: 5,
      start: [0],
      train: true,
      stagger: 0.25,
      transfers: { 1: { lift: 2, lower: 2, out: 'low' } },
      odd: true,
      until: 9.25,
    })
    expect(timeline(spec, 'leave', 'clear')).toEqual([
      '0 leave Z0 c0',
      '0.25 clear Z0',
      '5 leave Z1 c0 at speed',
      '7.5 clear Z1',
      '9 leave Z2 c0 at speed',
      '9.25 clear Z2',
    ])
  })

  test('one zone may differ from the line', () => {
    // Z1 alone is left by train release: c1 at 0, c0 at 0.25; Z2 by single release: c1 looks at 5 and leaves it at speed, Z2 is clear at 6.5.
    // c0 looks at 5.25, fails, is at rest at 6.25 and starts at 6.5.
    const spec = smallLoop({ zones: 5, start: [0, 1], train: [1], stagger: 0.25, until: 6.5 })
    expect(timeline(spec, 'leave', 'rest')).toEqual([
      '0 leave Z1 c1',
      '0.25 leave Z0 c0',
      '5 leave Z2 c1 at speed',
      '6.25 rest Z1 c0',
      '6.5 leave Z1 c0',
    ])
  })
})

describe('given times', () => {
  test('clear shorter than the move: the next carrier follows at a distance of clear', () => {
    // move 4, clear 1. c1 leaves at 0, Z1 is free at 1, c0 leaves; c1 leaves Z2 at 4, it is free at 5, when c0 arrives in Z1.
    expect(timeline(smallLoop({ zones: 4, start: [0, 1], move: 4, clear: 1, until: 5 }))).toEqual([
      '0 leave Z1 c1',
      '1 clear Z1',
      '1 leave Z0 c0',
      '2 clear Z0',
      '4 rest Z2 c1',
      '4 leave Z2 c1',
      '5 rest Z1 c0',
      '5 clear Z2',
      '5 leave Z1 c0',
    ])
  })

  test('clear longer than the move: the carrier is ahead, the zone behind it stays closed', () => {
    // move 2, clear 5. c0: Z1 at 2, Z2 at 4, then Z3 is occupied. Z0 is free at 5: c1 leaves Z3, is in Z0 at 7, when Z1 (left at 2) is just free.
    // Z3 is free at 10: c0 leaves Z2, is in Z3 at 12, when Z0 (left at 7) is just free.
    expect(timeline(smallLoop({ zones: 4, start: [0, 3], move: 2, clear: 5, until: 12 }))).toEqual([
      '0 leave Z0 c0',
      '2 rest Z1 c0',
      '2 leave Z1 c0',
      '4 rest Z2 c0',
      '5 clear Z0',
      '5 leave Z3 c1',
      '7 rest Z0 c1',
      '7 clear Z1',
      '7 leave Z0 c1',
      '9 rest Z1 c1',
      '10 clear Z3',
      '10 leave Z2 c0',
      '12 rest Z3 c0',
      '12 clear Z0',
      '12 leave Z3 c0',
    ])
  })

  test('clear = move, one draw: the zone is free when its carrier has arrived', () => {
    // move 4. c1 arrives in Z2 at 4 and finds Z0 occupied; c0 starts at 4, Z0 is free at 8: c1 starts. Z2 is free at 12: c0 starts.
    expect(timeline(smallLoop({ zones: 3, start: [0, 1], move: 4, clear: 'move', until: 12 }))).toEqual([
      '0 leave Z1 c1',
      '4 rest Z2 c1',
      '4 clear Z1',
      '4 leave Z0 c0',
      '8 rest Z1 c0',
      '8 clear Z0',
      '8 leave Z2 c1',
      '12 rest Z0 c1',
      '12 clear Z2',
      '12 leave Z1 c0',
    ])
    const random = smallLoop({ zones: 5, start: 3, move: { kind: 'exponential', mean: 2 }, clear: 'move', until: 200 })
    const at = (word: string) => timeline(random, word).map((line) => line.split(' ')[0])
    expect(at('clear')).toEqual(at('rest'))
    expect(at('clear').length).toBeGreaterThan(50)
  })

  test('a given move takes its time also at speed and ends at rest; the next starts from rest', () => {
    // path 1 takes 7 s: 5 to 12, though Z1 is left at speed (clear 1.5); Z2 is left from rest (clear 2.5), look at 12 + 5.
    expect(timeline(smallLoop({ zones: 5, start: [0], move: [null, 7], until: 17 }))).toEqual([
      '0 leave Z0 c0',
      '2.5 clear Z0',
      '5 look Z1 c0',
      '5 leave Z1 c0 at speed',
      '6.5 clear Z1',
      '12 rest Z2 c0',
      '12 leave Z2 c0',
      '14.5 clear Z2',
      '17 look Z3 c0',
      '17 leave Z3 c0 at speed',
    ])
  })

  test('a given clear replaces the clear alone', () => {
    // Z1 is left at speed at 5 as before, and free at 5 + 3
    expect(timeline(smallLoop({ zones: 5, start: [0], clear: [null, 3], until: 9 }), 'leave', 'clear')).toEqual([
      '0 leave Z0 c0',
      '2.5 clear Z0',
      '5 leave Z1 c0 at speed',
      '8 clear Z1',
      '9 leave Z2 c0 at speed',
    ])
  })
})

test('travelling sideways the width counts for the clear', () => {
  // width 3: e = 3 − 1 = 2: C(rest) = 2 + 1 + 0.5 = 3.5, C(speed) = 2.5; lengthwise 2.5 and 1.5
  const cleared = (across: number[]) => timeline(smallLoop({ zones: 4, start: [0], across, drive: { width: 3 }, until: 8 }), 'clear')
  expect(cleared([])).toEqual(['2.5 clear Z0', '6.5 clear Z1'])
  expect(cleared([0])).toEqual(['3.5 clear Z0', '6.5 clear Z1'])
  expect(cleared([1])).toEqual(['2.5 clear Z0', '7.5 clear Z1'])
})

test('counts of the moves out of two zones of a loop differ by the carriers at most', () => {
  // move 4, clear 1, alone: leaves Z0 at 0, 16, 32, 48, Z1 at 4, 20, 36; the start at 0 lies before the window (0, 48]
  const { result } = tell(smallLoop({ zones: 4, start: [0], move: 4, clear: 1, until: 48 }))
  expect(result.zones.map((zone) => zone.movesOut)).toEqual([3, 3, 3, 3])
  expect(result.lap).toEqual({ count: 3, mean: 16, sd: 0, min: 16, max: 16 })
  expect(result.carriers[0]!.laps).toBe(3)
})

test('of two moves that can start at one instant the one that has waited longer comes first, then the lower path', () => {
  // Z2 and Z6 are stopped from 1 to 20. c1 waits in Z5 from 4 on, c0 in Z1 from 8 on (its path takes 8 s).
  const stop = (zone: number) =>
    ({ name: `stop ${zone}`, on: { kind: 'zone', index: zone }, clock: 'calendar', after: 1, repair: 19 }) as const
  const starts = (slow: number) =>
    timeline(
      smallLoop({ zones: 8, start: [0, 4], move: [slow, 4, 4, 4, 4, 4, 4, 4], clear: 1, stops: [stop(2), stop(6)], until: 20 }),
      'leave',
    )
  expect(starts(8).slice(2)).toEqual(['20 leave Z5 c1', '20 leave Z1 c0'])
  expect(starts(4).slice(2)).toEqual(['20 leave Z1 c0', '20 leave Z5 c1'])
})
