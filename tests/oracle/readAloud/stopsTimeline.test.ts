/** Timelines worked out by hand: stops (MODEL.md §7 and §1, "Within one instant"). Loops of lineFor.ts. */

import type { LineSpec } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { say } from './eventLog.ts'
import { drivenLoop, givenLoop, until, withBreaks, withStations, withStop, withTransfer } from './lineFor.ts'
import { type ReadAloud, readAloud } from './readAloud.ts'
import { spent } from '../../helpers/spent.ts'

const NEVER = 1000

function timeline(spec: LineSpec): string[] {
  return readAloud(spec, 'hand', 0).log.map(say)
}

function run(spec: LineSpec): ReadAloud {
  return readAloud(spec, 'hand', 0)
}

test('a freeze in mid-move: both times stand still and go on with what they had left', () => {
  // Move 4 s, clear 3 s from Z0 at 0. Z1 is down from 2 to 7: arrival 4 + 5, clear 3 + 5.
  const spec = withStop(givenLoop(3, [0], 4, 3), { kind: 'zone', index: 1 }, 'calendar', [2, NEVER], [5])
  const { log, result } = run(until(spec, 9))
  expect(log.map(say)).toEqual([
    '0 c0 leaves Z0 from rest',
    '2 stop 0 begins',
    '7 stop 0 ends',
    '8 Z0 clear',
    '9 c0 at rest in Z1',
    '9 c0 leaves Z1 from rest',
    '9 end of window',
  ])
  // Z0 is not held: vacating 0–8, free 8–9. Z1: claimed 0–2 and 7–9, stopped 2–7. The carrier moves all the time.
  expect(spent(result.zones[0]!.seconds)).toEqual({ free: 1, vacating: 8 })
  expect(spent(result.zones[1]!.seconds)).toEqual({ claimed: 4, stopped: 5 })
  expect(result.zones[1]!.stoppedBy).toEqual([{ cause: 'stop 0', seconds: 5 }])
  expect(spent(result.carriers[0]!.seconds)).toEqual({ moving: 9 })
  expect(result.breakdowns).toEqual([{ name: 'stop 0', count: 1, seconds: 5 }])
})

test('a stop behind a carrier that has arrived still holds the clearing: the move is in progress until the zone behind is clear', () => {
  // Move 1 s, clear 4 s. c0 is in Z1 at 1 and loads there 1 to 11. Z1 is down from 2 to 5: Z0 is clear at 4 + 3.
  const spec = withStop(
    withStations(givenLoop(3, [0], 1, 4), { zone: 1, load: 10 }),
    { kind: 'zone', index: 1 },
    'calendar',
    [2, NEVER],
    [3],
  )
  expect(timeline(until(spec, 11))).toEqual([
    '0 c0 leaves Z0 from rest',
    '1 c0 at rest in Z1',
    '1 S0 starts load on c0',
    '1 c0 takes product 0',
    '2 stop 0 begins',
    '5 stop 0 ends',
    '7 Z0 clear',
    '11 S0 ends load on c0',
    '11 c0 leaves Z1 from rest',
    '11 end of window',
  ])
})

describe('a stop that begins at the very instant of an end', () => {
  test('the move still ends; the next one does not start, even if it takes 0 s', () => {
    // Moves 2 s, then 0 s. c0 is in Z1 at 2, when Z1 goes down for 3 s.
    const spec = withStop(givenLoop(3, [0], [2, 0, 1], [2, 0, 1]), { kind: 'zone', index: 1 }, 'calendar', [2, NEVER], [3])
    expect(timeline(until(spec, 5))).toEqual([
      '0 c0 leaves Z0 from rest',
      '2 stop 0 begins',
      '2 Z0 clear',
      '2 c0 at rest in Z1',
      '5 stop 0 ends',
      '5 c0 leaves Z1 from rest',
      '5 Z1 clear',
      '5 c0 at rest in Z2',
      '5 c0 leaves Z2 from rest',
      '5 end of window',
    ])
  })

  test('work still ends; release does not start', () => {
    // Load 3 s from 1 to 4; station down 4 to 6: release of 1 s from 6 to 7.
    const spec = withStop(
      withStations(givenLoop(3, [0], 1, 1), { zone: 1, load: 3, release: 1 }),
      { kind: 'station', index: 0 },
      'calendar',
      [4, NEVER],
      [2],
    )
    const { log, result } = run(until(spec, 8))
    expect(log.map(say).slice(3)).toEqual([
      '1 S0 starts load on c0',
      '1 c0 takes product 0',
      '4 stop 0 begins',
      '4 S0 ends load on c0',
      '6 stop 0 ends',
      '6 S0 starts release of c0',
      '7 S0 releases c0',
      '7 c0 leaves Z1 from rest',
      '8 Z1 clear',
      '8 c0 at rest in Z2',
      '8 c0 leaves Z2 from rest',
      '8 end of window',
    ])
    // working 1–4 and 6–7, stopped 4–6, exchanging 0–1 and 7–8. The zone: release not begun counts as other.
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 4, exchanging: 2, stopped: 2 })
    expect(spent(result.zones[1]!.seconds)).toEqual({ claimed: 1, working: 4, other: 2, vacating: 1 })
  })

  test('a carrier at the end of its way at speed can not pass into or out of a held zone', () => {
    // drivenLoop: c0 looks into Z2 at 3. Z1 is down from 3 to 10: it brakes, 1 s, frozen until 10, at rest at 11.
    const spec = withStop(drivenLoop(4, [0]), { kind: 'zone', index: 1 }, 'calendar', [3, NEVER], [7])
    expect(timeline(until(spec, 11))).toEqual([
      '0 c0 leaves Z0 from rest',
      '2.75 Z0 clear',
      '3 stop 0 begins',
      '3 c0 brakes into Z1',
      '10 stop 0 ends',
      '11 c0 at rest in Z1',
      '11 c0 leaves Z1 from rest',
      '11 end of window',
    ])
  })

  test('with no ramp the same carrier is at rest at that very instant', () => {
    // d/v = 2 s and no acceleration: M(start, rest) = M(start, speed) = 2; the move ends at 2, when Z1 goes down.
    const base = drivenLoop(4, [0])
    const level = { ...base, paths: base.paths.map((path) => ({ ...path, accelerationMetresPerSecondSquared: null })) }
    const spec = withStop(level, { kind: 'zone', index: 1 }, 'calendar', [2, NEVER], [7])
    expect(timeline(until(spec, 9)).slice(2)).toEqual([
      '2 stop 0 begins',
      '2 c0 brakes into Z1',
      '2 c0 at rest in Z1',
      '9 stop 0 ends',
      '9 c0 leaves Z1 from rest',
      '9 end of window',
    ])
  })

  test('a clock of operating time that reaches its value as the work ends does break down', () => {
    // Work of the station: load 3 s from 1 to 4. Time to failure 3 s of operation.
    const spec = withStop(
      withStations(givenLoop(3, [0], 1, 1), { zone: 1, load: 3 }),
      { kind: 'station', index: 0 },
      'operating',
      [3, NEVER],
      [2],
    )
    expect(timeline(until(spec, 6)).slice(5)).toEqual([
      '4 stop 0 begins',
      '4 S0 ends load on c0',
      '4 c0 leaves Z1 from rest', // a stop of the station does not hold the zone
      '5 Z1 clear',
      '5 c0 at rest in Z2',
      '5 c0 leaves Z2 from rest',
      '6 stop 0 ends',
      '6 Z2 clear',
      '6 c0 at rest in Z0',
      '6 c0 leaves Z0 from rest',
      '6 end of window',
    ])
  })
})

test('two sources on one station: each has its own clock, and work goes on when the last one ends', () => {
  // Load 10 s from 1. Source 0: operating, down after 2 s of work: at 3, for 4 s, to 7. Source 1: calendar, down at 5 for 5 s, to 10.
  // Work done 1–3 = 2 s; held 3–10; 8 s left: ends at 18. Source 0 again after 5 s of work: at 15, for 4 s, to 19: so work ends at 22.
  const station = withStations(givenLoop(3, [0], 1, 1), { zone: 1, load: 10 })
  const first = withStop(station, { kind: 'station', index: 0 }, 'operating', [2, 5, NEVER], [4])
  const spec = withStop(first, { kind: 'station', index: 0 }, 'calendar', [5, NEVER], [5])
  const { log, result } = run(until(spec, 22))
  expect(log.map(say).slice(3)).toEqual([
    '1 S0 starts load on c0',
    '1 c0 takes product 0',
    '3 stop 0 begins',
    '5 stop 1 begins',
    '7 stop 0 ends',
    '10 stop 1 ends',
    '15 stop 0 begins',
    '19 stop 0 ends',
    '22 S0 ends load on c0',
    '22 c0 leaves Z1 from rest',
    '22 end of window',
  ])
  // stopped 3–10 and 15–19; by cause each its whole time
  expect(spent(result.stations[0]!.seconds)).toEqual({ working: 10, exchanging: 1, stopped: 11 })
  expect(result.stations[0]!.stoppedBy).toEqual([
    { cause: 'stop 0', seconds: 8 },
    { cause: 'stop 1', seconds: 5 },
  ])
})

test('a clock of the line runs while any zone operates, and its stop holds every zone but no work', () => {
  // c0: move 0–1, load 1–3, move 3–4, move 4–… The line operates 0–1, 3–…: after 1.5 s of operation, at 3.5, it is down for 2 s: arrival in Z2 at 6.
  const station = withStations(givenLoop(3, [0], 1, 1), { zone: 1, load: 2 })
  const spec = withStop(station, { kind: 'section', index: 0 }, 'operating', [1.5, NEVER], [2])
  expect(timeline(until(spec, 6)).slice(5)).toEqual([
    '3 S0 ends load on c0',
    '3 c0 leaves Z1 from rest',
    '3.5 stop 0 begins',
    '5.5 stop 0 ends',
    '6 Z1 clear',
    '6 c0 at rest in Z2',
    '6 c0 leaves Z2 from rest',
    '6 end of window',
  ])
})

describe('a break from 2 to 6', () => {
  const loop = withStations(givenLoop(4, [0, 3], 1, 1), { zone: 1, load: 3 })

  test('with the conveyor going on: work stands still, moves do not', () => {
    // c0 loads from 1; 2 s left at 2; ends at 8. c1 leaves Z3 at 1 and waits in Z0 from 2.
    const { log, result } = run(until(withBreaks(loop, true, [2, 4]), 9))
    expect(log.map(say)).toEqual([
      '0 c0 leaves Z0 from rest',
      '1 Z0 clear',
      '1 c0 at rest in Z1',
      '1 S0 starts load on c0',
      '1 c0 takes product 0',
      '1 c1 leaves Z3 from rest',
      '2 break begins',
      '2 Z3 clear',
      '2 c1 at rest in Z0',
      '6 break ends',
      '8 S0 ends load on c0',
      '8 c0 leaves Z1 from rest',
      '9 Z1 clear',
      '9 c0 at rest in Z2',
      '9 c1 leaves Z0 from rest', // it has waited longest
      '9 c0 leaves Z2 from rest',
      '9 end of window',
    ])
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 3, exchanging: 2, break: 4 })
    expect(result.stations[0]!.stoppedBy).toEqual([{ cause: 'break', seconds: 4 }])
    expect(result.breaks).toEqual({ count: 1, seconds: 4 })
    expect(spent(result.zones[0]!.seconds)).toEqual({ claimed: 1, blocked: 7, vacating: 1 })
  })

  test('with the conveyor stopped too: a break from 1.5 freezes the move of c1', () => {
    // c1 is on its way from Z3 since 1: half a second left at 1.5; the break lasts 4 s: at rest at 6.
    const { log, result } = run(until(withBreaks(loop, false, [1.5, 4]), 6))
    expect(log.map(say).slice(6)).toEqual(['1.5 break begins', '5.5 break ends', '6 Z3 clear', '6 c1 at rest in Z0', '6 end of window'])
    expect(spent(result.zones[1]!.seconds)).toEqual({ claimed: 1, working: 1, stopped: 4 })
    expect(result.zones[1]!.stoppedBy).toEqual([{ cause: 'break', seconds: 4 }])
  })

  test('an automatic station that works in breaks goes on', () => {
    const station = withStations(givenLoop(4, [0, 3], 1, 1), { zone: 1, load: 3, automatic: true, worksInBreaks: true })
    const { log, result } = run(until(withBreaks(station, true, [2, 4]), 5))
    expect(log.map(say).slice(-5, -1)).toEqual(['5 Z1 clear', '5 c0 at rest in Z2', '5 c1 leaves Z0 from rest', '5 c0 leaves Z2 from rest'])
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 3, exchanging: 2 })
  })
})

test('a break during a breakdown: the states are exclusive, the causes each count their whole time', () => {
  // Station down from 3 to 6, break from 5 to 9: `stopped` 3–5, `break` 5–9; the source 3 s, the break 4 s.
  const station = withStations(givenLoop(3, [0], 1, 1), { zone: 1, load: 10 })
  const stopped = withStop(station, { kind: 'station', index: 0 }, 'calendar', [3, NEVER], [3])
  const [result] = run(until(withBreaks(stopped, true, [5, 4]), 12)).result.stations
  // exchanging 0–1, working 1–3 and 9–12
  expect(spent(result!.seconds)).toEqual({ working: 5, exchanging: 1, stopped: 2, break: 4 })
  expect(result!.stoppedBy).toEqual([
    { cause: 'stop 0', seconds: 3 },
    { cause: 'break', seconds: 4 },
  ])
})

test('the clock of a transfer runs only while it changes position, and its stop holds moves and the change', () => {
  // Z1: in low, out high, lift 2 s, lower 1 s. c0 in Z1 at 1, lifting 1 to 3; after 1.5 s of changing, at 2.5, down for 3 s: lifted at 6.
  const corner = withTransfer(givenLoop(3, [0], 1, 1), 1, 2, 1, 'low')
  const spec = withStop(corner, { kind: 'transfer', index: 1 }, 'operating', [1.5, NEVER], [3])
  expect(timeline(until(spec, 8))).toEqual([
    '0 c0 leaves Z0 from rest',
    '1 Z0 clear',
    '1 c0 at rest in Z1',
    '1 Z1 changes to high',
    '2.5 stop 0 begins',
    '5.5 stop 0 ends',
    '6 Z1 stands high',
    '6 c0 leaves Z1 from rest',
    '7 Z1 clear',
    '7 c0 at rest in Z2',
    '7 Z1 changes to low',
    '7 c0 leaves Z2 from rest',
    '8 Z2 clear',
    '8 c0 at rest in Z0',
    '8 Z1 stands low',
    '8 c0 leaves Z0 from rest',
    '8 end of window',
  ])
})
