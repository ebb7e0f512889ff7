/** Timelines worked out by hand: moves. The page is MODEL.md; the loops are those of lineFor.ts. */

import type { LineSpec } from '@loopwright/line'
import { expect, test } from 'vitest'
import { say } from './eventLog.ts'
import { drivenLoop, givenLoop, seconds, until, withStations } from './lineFor.ts'
import { readAloud } from './readAloud.ts'
import { spent } from '../../helpers/spent.ts'

function timeline(spec: LineSpec): string[] {
  return readAloud(spec, 'hand', 0).log.map(say)
}

test('a lone carrier starts from rest and passes every zone at speed', () => {
  // M(rest, speed) = 3: passes Z1 at 3; M(speed, speed) = 2: Z2 at 5, Z3 at 7. C(rest) = 2.75, C(speed) = 1.75: Z0 at 2.75, Z1 at 4.75, Z2 at 6.75.
  expect(timeline(until(drivenLoop(4, [0]), 7))).toEqual([
    '0 c0 leaves Z0 from rest',
    '2.75 Z0 clear',
    '3 c0 passes Z1',
    '3 c0 leaves Z1 from speed',
    '4.75 Z1 clear',
    '5 c0 passes Z2',
    '5 c0 leaves Z2 from speed',
    '6.75 Z2 clear',
    '7 c0 passes Z3',
    '7 c0 leaves Z3 from speed',
    '7 end of window',
  ])
})

test('a pass that fails: the carrier brakes and waits from the instant it is at rest', () => {
  // c1 goes to the load station in Z2 and stops there: M(rest, rest) = 4; loads 10 s: 4 to 14, then leaves; Z2 is clear at 14 + 2.75.
  // c0 may start when Z1 is clear, at 2.75; looks at 2.75 + 3 and sees Z2 occupied; at rest at 2.75 + 4; starts again at 16.75.
  const spec = withStations(drivenLoop(4, [0, 1]), { zone: 2, load: 10 })
  expect(timeline(until(spec, 16.75))).toEqual([
    '0 c1 leaves Z1 from rest',
    '2.75 Z1 clear',
    '2.75 c0 leaves Z0 from rest',
    '4 c1 at rest in Z2',
    '4 S0 starts load on c1',
    '4 c1 takes product 0',
    '5.5 Z0 clear',
    '5.75 c0 brakes into Z1',
    '6.75 c0 at rest in Z1',
    '14 S0 ends load on c1',
    '14 c1 leaves Z2 from rest',
    '16.75 Z2 clear',
    '16.75 c0 leaves Z1 from rest',
    '16.75 end of window',
  ])
})

test('a zone that turns free while a carrier brakes does not help it before it is at rest', () => {
  // As before, but the load takes 2 s: 4 to 6, so Z2 is clear at 8.75 > 6.75 … and with 0 s at 4 + 2.75 = 6.75, the very instant at which c0 is at rest.
  const spec = withStations(drivenLoop(4, [0, 1]), { zone: 2, load: 0 })
  expect(timeline(until(spec, 6.75)).slice(-5)).toEqual([
    '5.75 c0 brakes into Z1',
    '6.75 c0 at rest in Z1',
    '6.75 Z2 clear',
    '6.75 c0 leaves Z1 from rest',
    '6.75 end of window',
  ])
})

test('train release: only the stagger separates two starts', () => {
  // Z1 train: clear at 0.5; c0 starts at 0.5 and looks at 3.5; c1 passed Z2 at 3, so Z2 is clear at 3 + 1.75 = 4.75: too late, c0 is at rest at 4.5.
  const base = drivenLoop(5, [0, 1])
  const spec: LineSpec = { ...base, zones: base.zones.map((zone, index) => (index === 1 ? { ...zone, release: 'train' } : zone)) }
  expect(timeline(until(spec, 4.75))).toEqual([
    '0 c1 leaves Z1 from rest',
    '0.5 Z1 clear',
    '0.5 c0 leaves Z0 from rest',
    '3 c1 passes Z2',
    '3 c1 leaves Z2 from speed',
    '3.25 Z0 clear',
    '3.5 c0 brakes into Z1',
    '4.5 c0 at rest in Z1',
    '4.75 Z2 clear',
    '4.75 c0 leaves Z1 from rest',
    '4.75 end of window',
  ])
})

test('a given move takes its time also at speed, ends at rest, and the next one starts from rest', () => {
  // Path 1 takes 5 s: c0 passes Z1 at 3 (clear of Z1 derived: C(speed) = 1.75), is at rest in Z2 at 8, starts at 8 from rest, passes Z3 at 11.
  const base = drivenLoop(4, [0])
  const spec: LineSpec = { ...base, paths: base.paths.map((path, index) => (index === 1 ? { ...path, moveSeconds: seconds(5) } : path)) }
  expect(timeline(until(spec, 11)).slice(2)).toEqual([
    '3 c0 passes Z1',
    '3 c0 leaves Z1 from speed',
    '4.75 Z1 clear',
    '8 c0 at rest in Z2',
    '8 c0 leaves Z2 from rest',
    '10.75 Z2 clear',
    '11 c0 passes Z3',
    '11 c0 leaves Z3 from speed',
    '11 end of window',
  ])
})

test('clear longer than the move: the carrier goes on, the zone behind it stays closed', () => {
  // Moves 1 s, clear 3 s. c0 goes on through Z1 (1) to Z2 (2) and waits for Z3. Z0 is free at 3 only: c1 leaves Z3 then. Z1 is clear at 1 + 3.
  // c1 is in Z0 at 4, where Z1 has just turned free: it goes on to Z1 (5); Z2 is still taken. Z3 is clear at 6: c0 leaves.
  expect(timeline(until(givenLoop(4, [0, 3], 1, 3), 6))).toEqual([
    '0 c0 leaves Z0 from rest',
    '1 c0 at rest in Z1',
    '1 c0 leaves Z1 from rest',
    '2 c0 at rest in Z2',
    '3 Z0 clear',
    '3 c1 leaves Z3 from rest',
    '4 Z1 clear',
    '4 c1 at rest in Z0',
    '4 c1 leaves Z0 from rest',
    '5 c1 at rest in Z1',
    '6 Z3 clear',
    '6 c0 leaves Z2 from rest',
    '6 end of window',
  ])
})

test('a chain of moves of 0 s in one instant: each start first ends what it ends in no time', () => {
  // Only path 3 takes time (5 s). Three carriers in Z0, Z1, Z2 of four zones; Z3 is free.
  // Longest waiting all equal, so lower path first among those that can start: c2 into Z3 and out of it at once; then Z2 is free again: c1, and so on.
  expect(timeline(until(givenLoop(4, [0, 1, 2], [0, 0, 0, 5], [0, 0, 0, 5]), 4))).toEqual([
    '0 c2 leaves Z2 from rest',
    '0 Z2 clear',
    '0 c2 at rest in Z3',
    // c1 (waiting since 0) and c2 (waiting since 0): path 1 before path 3; c2 cannot start while Z0 is occupied
    '0 c1 leaves Z1 from rest',
    '0 Z1 clear',
    '0 c1 at rest in Z2',
    '0 c0 leaves Z0 from rest',
    '0 Z0 clear',
    '0 c0 at rest in Z1',
    '0 c2 leaves Z3 from rest',
    '4 end of window',
  ])
})

test('the product list ends, the carriers queue, and the run is out of products', () => {
  // Load in Z0 (3 s), unload in Z2 (0 s), moves and clears 1 s, one product. c0 loads 4 to 7 on its first arrival … c0 starts in Z1, c1 in Z3.
  // c1 is in Z0 at 1, loads product 0 from 1 to 4; is in Z1 at 5, in Z2 at 6: off at 6. c0: Z2 at 1 (empty, no duty), Z3 at 2, waits there until Z0 is clear at 5; in Z0 at 6: no product.
  // c1 leaves Z2 at 6, in Z3 at 7; Z2 clear at 7. Nothing more can happen: out of products at 7; c1 in Z3 waits for Z0.
  const base = withStations(givenLoop(4, [1, 3], 1, 1), { zone: 0, load: 3 }, { zone: 2, unload: true })
  const run = readAloud(until({ ...base, mix: { kind: 'list', sequence: [0] } }, 20), 'hand', 0)
  expect(run.log.map(say)).toEqual([
    '0 c0 leaves Z1 from rest',
    '0 c1 leaves Z3 from rest',
    '1 Z1 clear',
    '1 c0 at rest in Z2',
    '1 Z3 clear',
    '1 c1 at rest in Z0',
    '1 S0 starts load on c1',
    '1 c1 takes product 0',
    '1 c0 leaves Z2 from rest',
    '2 Z2 clear',
    '2 c0 at rest in Z3',
    '4 S0 ends load on c1',
    '4 c1 leaves Z0 from rest',
    '5 Z0 clear',
    '5 c1 at rest in Z1',
    '5 c0 leaves Z3 from rest',
    '5 c1 leaves Z1 from rest',
    '6 Z3 clear',
    '6 c0 at rest in Z0',
    '6 Z1 clear',
    '6 c1 at rest in Z2',
    '6 S1 starts unload on c1',
    '6 S1 ends unload on c1',
    '6 product 0 off c1',
    '6 c1 leaves Z2 from rest',
    '7 Z2 clear',
    '7 c1 at rest in Z3',
    '7 out of products',
  ])
  expect(run.result.end).toEqual({ reason: 'out of products', atSeconds: 7, waits: [[3, 0]], cycle: [], unmanned: [] })
  expect(run.result.timeInLine).toEqual({ count: 1, mean: 5, sd: null, min: 5, max: 5 })
  expect(run.result.productsInLineMean).toBe(5 / 20)
  // S0 in (0, 20]: exchanging 0–1 and 4–6, working 1–4, waiting for product from 6 on
  expect(spent(run.result.stations[0]!.seconds)).toEqual({ working: 3, 'waiting for product': 14, exchanging: 3 })
  // S1: a carrier on its way in 0–1, on its way out 1–2, starved 2–5, on its way in 5–6, out 6–7, starved 7–20
  expect(spent(run.result.stations[1]!.seconds)).toEqual({ exchanging: 4, starved: 16 })
})
