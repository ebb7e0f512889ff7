/**
 * Starts ahead of the clock, worked out by hand: 4 s at speed, 5 s with one ramp, 6 s with two; clear 1.5 s after a start at speed, 2.5 s after one from rest
 * (tests/helpers/smallLoop.ts). That nothing is told otherwise than instant by instant is compared in quick.test.ts and moveStart.test.ts.
 */
import { expect, test } from 'vitest'
import { smallLoop, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { resetLine } from '../build/start.ts'
import { handleInstant } from '../instant/instant.ts'
import type { Line } from '../state/line.ts'
import { ZONE_WIDTH } from '../telling/collect.ts'
import { Z_BLOCKED } from '../telling/states.ts'
import { runQuick } from './quick.ts'
import { settleRests } from './quickRest.ts'
import { startQuick } from './quickStart.ts'
import { makeQuick, type Quick } from './quickZones.ts'

/** The line at time 0, when all that can start has started, and how far the clock may go. */
function begin(wish: Wish, until: number): { line: Line; quick: Quick } {
  const line = buildLine(smallLoop(wish))
  resetLine(line, 'a', 0)
  handleInstant(line)
  const quick = makeQuick(line)!
  quick.until = until
  return { line, quick }
}

/** Lets the carrier that is due next look, and go on. */
function look(line: Line, quick: Quick): void {
  const path = line.queue.first() - line.slots.arrivalSlot
  line.now = line.queue.firstTime()
  line.queue.pop()
  line.activity--
  line.moves.pathCarrier[path] = -1
  startQuick(line, quick, line.graph.onlyOut[line.graph.pathTo[path]!]!, 1)
}

const pending = ({ queue }: Line): number[] => [...queue.times].filter((_, slot) => queue.isPending(slot)).sort((a, b) => a - b)

test('a lone carrier goes on to the end of the part, and has one timer: the look that comes after it', () => {
  // looks at 5, 9, 13, …; laps begin in zone 0, whose start is not worked out before its instant
  const { line, quick } = begin({ zones: 4, start: [1] }, 100)
  expect(pending(line)).toEqual([5])
  look(line, quick)
  expect([line.now, pending(line), line.moves.carrierZone[0], line.events]).toEqual([5, [13], 0, 1])
  const short = begin({ zones: 4, start: [1] }, 8)
  look(short.line, short.quick)
  expect([pending(short.line), short.line.moves.carrierZone[0]]).toEqual([[9], 3])
})

/** c0 works in Z5 from 6 to 106; c1 looks at the end of Z2 at 5, of Z3 at 9, and of Z4 at 13: there it stops, at rest at 14. */
const behindWork: Wish = { zones: 8, start: [4, 1], stations: [{ at: 5, load: 100 }], until: 1_000 }

test('behind one that works a carrier stops without a timer; it follows when that one has left', () => {
  const { line, quick } = begin(behindWork, 0)
  expect(runQuick(line, quick, 110)).toBe(true)
  // c0 leaves at 106 and looks at 111; Z5 is clear at 108.5, when c1 starts, and is at rest at 114.5
  expect(pending(line)).toEqual([111, 114.5])
  expect([...line.moves.carrierZone]).toEqual([6, 5])
  expect(line.collector.zoneSeconds.subarray(4 * ZONE_WIDTH, 5 * ZONE_WIDTH)[Z_BLOCKED]).toBe(108.5 - 14)
  const early = begin(behindWork, 0)
  expect(runQuick(early.line, early.quick, 107)).toBe(true)
  expect([pending(early.line), [...early.line.moves.carrierZone]]).toEqual([
    [108.5, 111],
    [6, 4],
  ])
})

test('a look whose time has not come gets a timer, where the rest is made good', () => {
  const { line, quick } = begin(behindWork, 1_000)
  look(line, quick)
  expect([line.now, quick.known, quick.lookAt[1], quick.restAt[1]]).toEqual([5, 1, 13, 14])
  settleRests(line, quick)
  expect([quick.known, pending(line)]).toEqual([0, [6, 13]])
})

test('nothing is worked out beyond the next break, nor into a station that is held', () => {
  const lone: Wish = { zones: 8, start: [1], stations: [{ at: 4, work: { w: 1 } }] }
  // empty, so that it has nothing to do in Z4: it looks at 5, 9, 13, …
  const free = begin(lone, 20)
  look(free.line, free.quick)
  expect(pending(free.line)).toEqual([21])
  const untilBreak = begin({ ...lone, breaks: [[10, 5]] }, 20)
  look(untilBreak.line, untilBreak.quick)
  expect(pending(untilBreak.line)).toEqual([10, 13])
  const held = begin({ ...lone, breaks: [[90, 5]] }, 20)
  held.line.stops.stationHeld[0] = 1
  look(held.line, held.quick)
  expect(pending(held.line)).toEqual([9, 90])
})
