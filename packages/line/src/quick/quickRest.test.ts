/** Rests whose instant is known, worked out by hand: v = 1 m/s, zones of 4 m, 3 s to the look (5 s with the first ramp), 1 s more to rest (tests/helpers/smallLoop.ts). */
import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { CARRIER_SINCE, CARRIER_WIDTH, ZONE_SINCE, ZONE_WIDTH } from '../telling/collect.ts'
import { handleInstant } from '../instant/instant.ts'
import { runQuick } from './quick.ts'
import { makeRest, settleRests, timeRest } from './quickRest.ts'
import { makeQuick, type Quick } from './quickZones.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { BRAKING, DONE, OCCUPIED } from '../state/moves.ts'

/** c0 works in Z2; c1 has looked from Z0 at Z1 before it, at 5, and will be at rest at 6. */
function braking(): { line: Line; quick: Quick } {
  const line = buildLine(
    smallLoop({
      zones: 5,
      start: [2, 0],
      stations: [
        { at: 2, load: 100 },
        { at: 4, unload: true },
      ],
    }),
  )
  resetLine(line, 'a', 0)
  line.now = 5
  line.moves.carrierZone[1] = 1
  line.moves.carrierPath[1] = 0
  line.moves.carrierPhase[1] = BRAKING
  line.moves.zoneCarrier[0] = NONE
  line.moves.zoneCarrier[1] = 1
  line.moves.pathCarrier[0] = 1
  line.activity = 1
  const quick = makeQuick(line)!
  quick.restAt[1] = 6
  quick.restIsKnown[1] = 1
  quick.known = 1
  return { line, quick }
}

test('a rest made good counts from its instant on, not from now', () => {
  const { line, quick } = braking()
  line.now = 50
  makeRest(line, quick, 1)
  expect([line.moves.carrierPhase[1], line.moves.carrierSince[1], line.moves.zoneState[1], line.moves.pathCarrier[0]]).toEqual([
    DONE,
    6,
    OCCUPIED,
    NONE,
  ])
  expect([line.activity, line.events, quick.known, quick.restIsKnown[1]]).toEqual([0, 1, 0, 0])
  expect([line.collector.zoneSeconds[ZONE_WIDTH + ZONE_SINCE], line.collector.carrierSeconds[CARRIER_WIDTH + CARRIER_SINCE]]).toEqual([
    6, 6,
  ])
})

test('a rest that gets a timer after all is an arrival', () => {
  const { line, quick } = braking()
  timeRest(line, quick, 1)
  expect([line.queue.isPending(line.slots.arrivalSlot), line.queue.times[line.slots.arrivalSlot], quick.known, line.activity]).toEqual([
    true,
    6,
    0,
    1,
  ])
})

test('settling makes those good that are over, and times the others', () => {
  for (const [now, isOver] of [
    [5.5, false],
    [6, true],
    [7, true],
  ] as const) {
    const { line, quick } = braking()
    line.now = now
    settleRests(line, quick)
    expect([now, line.moves.carrierPhase[1] === DONE, line.queue.isPending(line.slots.arrivalSlot), quick.known]).toEqual([
      now,
      isOver,
      !isOver,
      0,
    ])
  }
})

test('on the way no rest has a timer, and at the end of a part none is left', () => {
  const line = buildLine(smallLoop({ zones: 6, start: [4, 2, 0], stations: [{ at: 4, unload: true, load: 60 }], until: 500 }))
  resetLine(line, 'a', 0)
  handleInstant(line)
  const quick = makeQuick(line)!
  for (const until of [4, 5, 5.5, 6, 20, 61, 70, 500]) {
    expect(runQuick(line, quick, until)).toBe(true)
    expect([until, quick.known]).toEqual([until, 0])
  }
})
