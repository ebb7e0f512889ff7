/** Timelines worked out by hand: transfers and gridlock (MODEL.md §4, §10). Loops of lineFor.ts. */

import type { LineSpec } from '@loopwright/line'
import { expect, test } from 'vitest'
import { say } from './eventLog.ts'
import { drivenLoop, givenLoop, until, withStations, withTransfer } from './lineFor.ts'
import { readAloud } from './readAloud.ts'
import { spent } from '../../helpers/spent.ts'

function timeline(spec: LineSpec): string[] {
  return readAloud(spec, 'hand', 0).log.map(say)
}

test('a plain corner adds the lift to the stay and the lowering to the clear time', () => {
  // Moves 1 s, clears 1 s, lift 2 s, lower 1.5 s. c0: in Z1 at 1, lifted 1 to 3, leaves 3, clear 4, lowered 4 to 5.5: free. c1 in Z0 from 2 leaves at 5.5.
  const spec = withTransfer(givenLoop(4, [0, 3], 1, 1), 1, 2, 1.5, 'low')
  expect(timeline(until(spec, 5.5))).toEqual([
    '0 c0 leaves Z0 from rest',
    '1 Z0 clear',
    '1 c0 at rest in Z1',
    '1 Z1 changes to high',
    '1 c1 leaves Z3 from rest',
    '2 Z3 clear',
    '2 c1 at rest in Z0',
    '3 Z1 stands high',
    '3 c0 leaves Z1 from rest',
    '4 Z1 clear',
    '4 c0 at rest in Z2',
    '4 Z1 changes to low',
    '4 c0 leaves Z2 from rest',
    '5 Z2 clear',
    '5 c0 at rest in Z3',
    '5.5 Z1 stands low',
    '5.5 c1 leaves Z0 from rest',
    '5.5 end of window',
  ])
})

test('a way in that needs high and a way out that needs low, with work between: the change comes after work and release', () => {
  // At time 0 the empty transfer stands high. In Z1 at 1; load 2 s, release 0.5 s: done working at 3.5; lowered 1.5 s: leaves at 5; clear at 6; lifted 2 s: free at 8.
  const spec = withStations(withTransfer(givenLoop(4, [0], 1, 1), 1, 2, 1.5, 'high'), { zone: 1, load: 2, release: 0.5 })
  const run = readAloud(until(spec, 8), 'hand', 0)
  expect(run.log.map(say).filter((line) => /Z1|S0/.test(line))).toEqual([
    '1 c0 at rest in Z1',
    '1 S0 starts load on c0',
    '3 S0 ends load on c0',
    '3 S0 starts release of c0',
    '3.5 S0 releases c0',
    '3.5 Z1 changes to low',
    '5 Z1 stands low',
    '5 c0 leaves Z1 from rest',
    '6 Z1 clear',
    '6 Z1 changes to high',
    '8 Z1 stands high',
  ])
  // Z1: claimed 0–1, occupied 1–5 (working 1–3.5, other 3.5–5), vacating 5–8; the station: working 2.5 s, exchanging the other 5.5 s
  expect(spent(run.result.zones[1]!.seconds)).toEqual({ claimed: 1, working: 2.5, other: 1.5, vacating: 3 })
  expect(spent(run.result.stations[0]!.seconds)).toEqual({ working: 2.5, exchanging: 5.5 })
})

test('in the right position nothing is different: a carrier passes a transfer that need not change at speed', () => {
  // Z1 is a transfer that the way in and the way out both want low. It is left by single release although its zone says train: clear C(speed) = 1.75.
  const base = drivenLoop(4, [0])
  const transfer = { liftSeconds: 2, lowerSeconds: 2, enterOnlyIfExitClear: false }
  const spec: LineSpec = { ...base, zones: base.zones.map((z, index) => (index === 1 ? { ...z, release: 'train', transfer } : z)) }
  expect(timeline(until(spec, 5)).slice(2, 6)).toEqual(['3 c0 passes Z1', '3 c0 leaves Z1 from speed', '4.75 Z1 clear', '5 c0 passes Z2'])
})

test('enter only if the exit is clear: two such transfers in a row are claimed with the zone after them', () => {
  // Z1 and Z2 are exit-clear transfers that need not change; moves 1 s, clears 1.5 s. c1 stands in Z3, c0 in Z0.
  // c1 leaves Z3 at 0; Z3 is free at 1.5. Only then c0 leaves Z0: Z1, Z2, Z3 become claimed; it is at rest in Z1 at 2.5 and in Z2 at 3.5, in Z3 at 4.5.
  const transfer = { liftSeconds: 2, lowerSeconds: 2, enterOnlyIfExitClear: true }
  const base = givenLoop(5, [0, 3], 1, 1.5)
  const spec = withStations(
    { ...base, zones: base.zones.map((z, index) => (index === 1 || index === 2 ? { ...z, transfer } : z)) },
    { zone: 3, load: 1 },
  )
  const run = readAloud(until(spec, 5), 'hand', 0)
  expect(run.log.map(say)).toEqual([
    '0 c1 leaves Z3 from rest',
    '1 c1 at rest in Z4',
    '1.5 Z3 clear',
    '1.5 c0 leaves Z0 from rest',
    '2.5 c0 at rest in Z1',
    '2.5 c0 leaves Z1 from rest',
    '3 Z0 clear',
    '3 c1 leaves Z4 from rest',
    '3.5 c0 at rest in Z2',
    '3.5 c0 leaves Z2 from rest',
    '4 Z1 clear',
    '4 c1 at rest in Z0',
    '4.5 Z4 clear',
    '4.5 c0 at rest in Z3',
    '4.5 S0 starts load on c0',
    '4.5 c0 takes product 0',
    '5 Z2 clear',
    '5 end of window',
  ])
  // Z3: vacating 0–1.5, claimed 1.5–4.5 (set aside, then on its way in), working 4.5–5. It holds nobody until the move Z2 → Z3 starts at 3.5.
  expect(spent(run.result.zones[3]!.seconds)).toEqual({ claimed: 3, working: 0.5, vacating: 1.5 })
  expect(run.result.zones[3]!.occupancyMean).toBe(1.5 / 5)
  // the station is exchanging all the while: a carrier on its way out until clear, then one has the zone set aside
  expect(spent(run.result.stations[0]!.seconds)).toEqual({ working: 0.5, exchanging: 4.5 })
})

test('every storage zone full before exit-clear transfers: gridlock at once', () => {
  // Zones 1 and 3 of five are exit-clear; carriers in 0, 2, 4: 0 waits for 2 behind Z1, 2 for 4 behind Z3, 4 for 0.
  const base = givenLoop(5, [0, 2, 4], 1, 1)
  const spec = withTransfer(withTransfer(base, 1, 1, 1, 'low', true), 3, 1, 1, 'low', true)
  const run = readAloud(until({ ...spec, carriers: { ...spec.carriers, start: 'spread' } }, 50, 10), 'hand', 0)
  expect(run.log.map(say)).toEqual(['0 gridlock'])
  const waits = [
    [0, 2],
    [2, 4],
    [4, 0],
  ]
  expect(run.result.end).toEqual({ reason: 'gridlock', atSeconds: 0, waits, cycle: [0, 2, 4], unmanned: [] })
  // "The states of that instant count for the rest of the window": 40 s
  const [blocked, free, waiting] = [{ blocked: 40 }, { free: 40 }, { 'waiting empty': 40 }]
  expect(run.result.zones.map((zone) => spent(zone.seconds))).toEqual([blocked, free, blocked, free, blocked])
  expect(run.result.carriers.map((carrier) => spent(carrier.seconds))).toEqual([waiting, waiting, waiting])
})
