/** Clocks of failures that run with the operation of a part; timelines worked out by hand from MODEL.md §7. */
import { expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { type StopWish, smallLoop, tell, timeline } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { operateStation, operateZone, startClock, stopStation } from './operation.ts'
import { resetLine } from '../build/start.ts'

const GIVEN = { move: 4, clear: 3 }
const on = (part: StopWish['on'], after: number | readonly number[], repair: number): StopWish => ({
  name: 'wear',
  on: part,
  after,
  repair,
})
const STATION = { kind: 'station', index: 0 } as const

test('the clock of a station counts its work alone: not the release, not the time without a carrier', () => {
  // move 2, clear 1. Load 2–6 (4 s on the clock), release 6–8; Z2 10, Z0 12, Z1 14: load begins, the clock reaches 5 at 15.
  // Repaired at 18, 3 s of load left: 21; release to 23.
  const spec = smallLoop({
    zones: 3,
    start: [0],
    move: 2,
    clear: 1,
    stations: [{ at: 1, unload: true, load: 4, release: 2 }],
    stops: [on(STATION, 5, 3)],
    until: 23,
  })
  expect(timeline(spec).filter((line) => /load (begins|ends)|release|wear/.test(line) && !line.includes('unload'))).toEqual([
    '2 load begins S1 c0',
    '6 load ends S1 c0',
    '6 release begins S1 c0',
    '8 release ends S1 c0',
    '14 load begins S1 c0',
    '15 stop wear',
    '18 repaired wear',
    '21 load ends S1 c0',
    '21 release begins S1 c0',
    '23 release ends S1 c0',
  ])
})

test('a clock that reaches its value at the very end of the work does break down', () => {
  // load 2–6: 4 s. Down from 6 to 9: the load has ended, the release waits.
  const spec = smallLoop({
    zones: 3,
    start: [0],
    move: 2,
    clear: 1,
    stations: [{ at: 1, load: 4, release: 2 }],
    stops: [on(STATION, 4, 3)],
    until: 11,
  })
  expect(timeline(spec).filter((line) => /S1|wear/.test(line))).toEqual([
    '2 load begins S1 c0',
    '6 stop wear',
    '6 load ends S1 c0',
    '9 repaired wear',
    '9 release begins S1 c0',
    '11 release ends S1 c0',
  ])
})

test('two operating clocks on one station: each stands still while the other holds it', () => {
  // move 4. Load 10 from 4. `short` after 2 at 6, repair 3; `wear` has run 2 s then, and reaches 5 at 9 + 3 = 12, repair 2. Work done 2 + 3, left 5: 14 to 19.
  const spec = smallLoop({
    zones: 4,
    start: [0],
    ...GIVEN,
    stations: [{ at: 1, load: 10 }],
    stops: [{ ...on(STATION, 2, 3), name: 'short' }, on(STATION, 5, 2)],
    until: 19,
  })
  const { result, lines } = tell(spec)
  expect(lines.filter((line) => /S1|stop|repaired/.test(line))).toEqual([
    '4 load begins S1 c0',
    '6 stop short',
    '9 repaired short',
    '12 stop wear',
    '14 repaired wear',
    '19 load ends S1 c0',
  ])
  expect(result.stations[0]!.stoppedBy).toEqual([
    { cause: 'short', seconds: 3 },
    { cause: 'wear', seconds: 2 },
  ])
})

test('a break stops the clock with the work', () => {
  // load 10 from 4; break 6–9; the clock has run 2 s then and reaches 5 at 9 + 3 = 12; repair 1: 13; work done 2 + 3, left 5: 18
  const spec = smallLoop({
    zones: 4,
    start: [0],
    ...GIVEN,
    stations: [{ at: 1, load: 10 }],
    stops: [on(STATION, 5, 1)],
    breaks: [[6, 3]],
    until: 18,
  })
  expect(timeline(spec).filter((line) => /S1|wear|break/.test(line))).toEqual([
    '4 load begins S1 c0',
    '6 break begins',
    '9 break ends',
    '12 stop wear',
    '13 repaired wear',
    '18 load ends S1 c0',
  ])
})

test('the clock of a zone runs in the move into it and in the move out of it', () => {
  // by the drive: in 0 to 5; out at speed from 5 to clear at 6.5. Fails after 6 at 6: clear has 0.5 left, the look at Z2 (due at 9) 3 s. Repair 2.
  const drive = smallLoop({ zones: 4, start: [0], stops: [on({ kind: 'zone', index: 1 }, 6, 2)], until: 11 })
  expect(timeline(drive, 'stop', 'repaired', 'clear', 'look')).toEqual([
    '2.5 clear Z0',
    '5 look Z1 c0',
    '6 stop wear',
    '8 repaired wear',
    '8.5 clear Z1',
    '11 look Z2 c0',
  ])
  // with a station in it: in 0 to 4, work 4–14 does not count, out 14 to 17: fails after 5.5 at 15.5
  const station = smallLoop({
    zones: 4,
    start: [0],
    ...GIVEN,
    stations: [{ at: 1, load: 10 }],
    stops: [on({ kind: 'zone', index: 1 }, 5.5, 2)],
    until: 20,
  })
  expect(timeline(station, 'stop', 'repaired', 'clear', 'rest')).toEqual([
    '3 clear Z0',
    '4 rest Z1 c0',
    '15.5 stop wear',
    '17.5 repaired wear',
    '19 clear Z1',
    '20 rest Z2 c0',
  ])
})

test('the clock of a zone runs while its transfer changes', () => {
  // in 0–4, lift 4–6, out 6–9, lowering 9–10.5: fails after 5 at 5, in the lift; and, 5 after the repair at 6: lift to 7, out 7–10, lowering from 10: at 11
  const spec = smallLoop({
    zones: 5,
    start: [0],
    ...GIVEN,
    transfers: { 1: { lift: 2, lower: 1.5 } },
    stops: [on({ kind: 'zone', index: 1 }, [5, 5, 1000], 1)],
    until: 12.5,
  })
  expect(timeline(spec).filter((line) => /turn|wear/.test(line))).toEqual([
    '4 turn Z1 out',
    '5 stop wear',
    '6 repaired wear',
    '7 turned Z1 out',
    '10 turn Z1 back',
    '11 stop wear',
    '12 repaired wear',
    '12.5 turned Z1 back',
  ])
})

test('the clock of the line runs while any zone operates', () => {
  // move 0–4, load 4–14, move from 14: fails after 6 at 16; clear (due 17) has 1 s left, the arrival 2 s; repair 5
  const spec = smallLoop({
    zones: 4,
    start: [0],
    ...GIVEN,
    stations: [{ at: 1, load: 10 }],
    stops: [on({ kind: 'section', index: 0 }, 6, 5)],
    until: 23,
  })
  expect(timeline(spec, 'stop', 'repaired', 'clear', 'rest')).toEqual([
    '3 clear Z0',
    '4 rest Z1 c0',
    '16 stop wear',
    '21 repaired wear',
    '22 clear Z1',
    '23 rest Z2 c0',
  ])
  // two zones that operate at once count once: c0 and c1 move together from 0, and fail after 3 at 3
  const two = smallLoop({ zones: 6, start: [0, 3], ...GIVEN, stops: [on({ kind: 'section', index: 0 }, 3, 1)], until: 5 })
  expect(timeline(two, 'stop', 'rest')).toEqual(['3 stop wear', '5 rest Z1 c0', '5 rest Z4 c1'])
})

test('a clock has a timer only where it runs out while its part operates, as far as that is known', () => {
  const spec = smallLoop({ zones: 4, start: [0], ...GIVEN, stations: [{ at: 1, load: 10 }], stops: [on(STATION, 5, 1)] })
  const line = buildLine(spec)
  resetLine(line, 'seed', 0)
  const { queue, stops, slots } = line
  const clock = () => [stops.sourceLeft[0], stops.sourceTimed[0], queue.isPending(0) ? queue.times[0] : null]
  expect(clock()).toEqual([5, 0, null])
  // work from 0 to 4, told twice: 1 s is left then
  queue.times[slots.workSlot] = 4
  operateStation(line, 0)
  operateStation(line, 0)
  expect(clock()).toEqual([1, 0, null])
  // held at 1, twice: 4 s are left
  line.now = 1
  stopStation(line, 0)
  stopStation(line, 0)
  expect(clock()).toEqual([4, 0, null])
  // on from 3 to 7: it runs out as work ends
  line.now = 3
  queue.times[slots.workSlot] = 7
  operateStation(line, 0)
  expect(clock()).toEqual([0, 1, 7])
  // longer than was known: its instant stays, 2 s before the end
  queue.times[slots.workSlot] = 9
  operateStation(line, 0)
  expect(clock()).toEqual([-2, 1, 7])
  // held at 6, with 1 s left; on from 8
  line.now = 6
  stopStation(line, 0)
  expect(clock()).toEqual([1, 0, null])
  line.now = 8
  queue.times[slots.workSlot] = 11
  operateStation(line, 0)
  expect(clock()).toEqual([-2, 1, 9])
  // at its very value it is not held any more
  line.now = 9
  stopStation(line, 0)
  expect(clock()).toEqual([0, 1, 9])
})

test('a clock that starts anew while its part goes on counts from now', () => {
  const line = buildLine(smallLoop({ zones: 4, start: [0], ...GIVEN, stops: [on({ kind: 'section', index: 0 }, [5, 2, 5], 1)] }))
  resetLine(line, 'seed', 0)
  line.now = 10
  line.queue.times[line.slots.arrivalSlot] = 14
  operateZone(line, 1, line.slots.arrivalSlot)
  expect([line.stops.sourceLeft[0], line.sections.sectionUntil[0]]).toEqual([1, 14])
  line.now = 11
  for (const [seconds, left, due] of [
    [5, 2, null],
    [3, 0, 14],
  ] as const) {
    line.draws.drawn[0] = seconds
    startClock(line, 0)
    expect([line.stops.sourceLeft[0], line.queue.isPending(0) ? line.queue.times[0] : null]).toEqual([left, due])
  }
})

test('a zone with several ways in operates for moves by each of them', () => {
  // Z2: c0 in from 0 to 4 and out to 7, then c1 in by another path: 9 s of operation at 9. c1 has 2 s left, the clear of Z1 1 s: repaired at 14
  const spec = smallGraph({
    zones: 5,
    start: [0, 1],
    paths: [...chain(0, 2), ...chain(1, 2, 3, 4)],
    ...GIVEN,
    stops: [on({ kind: 'zone', index: 2 }, 9, 5)],
    until: 16,
  })
  expect(timeline(spec, 'stop', 'repaired', 'rest', 'clear').filter((line) => !/Z[034]/.test(line))).toEqual([
    '4 rest Z2 c0',
    '7 clear Z2',
    '9 stop wear',
    '14 repaired wear',
    '15 clear Z1',
    '16 rest Z2 c1',
  ])
})
