/** Every rule of verify mode is seen to fail, on a line that was tampered with while it ran. Over 300 lines because each rule has its row. */
import { describe, expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { handleInstant } from './instant.ts'
import { checkInvariants } from './invariants.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { CHANGING, CLAIMED, DONE, FREE, LOOKING, OCCUPIED, VACATING } from '../state/moves.ts'
import { TO_WAY_OUT_PENDING } from '../state/transfers.ts'

/**
 * Five zones, move 4, clear 3; Z1 a transfer (lift 2), Z3 a station (load 6); carriers in Z0 and Z2. A station source is down from 5 to 8.
 * At 5: c0 in Z1 on the transfer, which lifts until 6; c1 in Z3, its load held with 5 s left: it leaves at 13, and Z4 is stopped at 15.
 */
function lineAt(instant: number): Line {
  const spec = smallLoop({
    zones: 5,
    start: [0, 2],
    move: 4,
    clear: 3,
    transfers: { 1: { lift: 2, lower: 2 } },
    stations: [{ at: 3, load: 6 }],
    stops: [
      { name: 'wear', on: { kind: 'station', index: 0 }, clock: 'calendar', after: 5, repair: 3 },
      { name: 'jam', on: { kind: 'zone', index: 4 }, clock: 'calendar', after: 15, repair: 3 },
    ],
  })
  const line = buildLine(spec)
  resetLine(line, 'seed', 0)
  for (;;) {
    handleInstant(line)
    checkInvariants(line)
    if (line.queue.times[line.queue.first()]! > instant) return line
    line.now = line.queue.times[line.queue.first()]!
  }
}

const ARRIVAL = (line: Line, path: number) => line.slots.arrivalSlot + path

const RULES: readonly (readonly [message: string, at: number, tamper: (line: Line) => void])[] = [
  [
    'an instant lies off the clock grid',
    2,
    (line) => {
      line.now = 0.1
    },
  ],
  [
    'a carrier still looks at the end of an instant',
    2,
    (line) => {
      line.moves.lookList.length = 1
    },
  ],
  [
    'the zones do not hold as many carriers as there are',
    2,
    (line) => {
      line.moves.zoneCarrier[4] = 0
    },
  ],
  [
    'a carrier is not in the zone it is in',
    2,
    (line) => {
      line.moves.carrierZone[0] = 3
    },
  ],
  [
    'a carrier looks at the end of an instant',
    2,
    (line) => {
      line.moves.carrierPhase[0] = LOOKING
    },
  ],
  [
    'a product was never loaded',
    5,
    (line) => {
      line.goods.carrierSerial[0] = 7
    },
  ],
  [
    'a free zone holds or expects a carrier',
    5,
    (line) => {
      line.moves.zoneState[1] = FREE
    },
  ],
  [
    'a free zone holds or expects a carrier',
    5,
    (line) => {
      line.moves.zoneClaimant[4] = 0
    },
  ],
  [
    'a claimed zone expects another carrier than it holds',
    2,
    (line) => {
      line.moves.zoneClaimant[1] = 1
    },
  ],
  [
    'a claimed zone expects another carrier than it holds',
    2,
    (line) => {
      line.moves.zoneClaimant[1] = NONE
    },
  ],
  [
    'a carrier stands in a claimed zone',
    2,
    (line) => {
      line.moves.carrierPhase[0] = DONE
    },
  ],
  [
    'an occupied zone has no carrier at rest',
    2,
    (line) => {
      line.moves.zoneState[1] = OCCUPIED
    },
  ],
  [
    'an occupied zone has no carrier at rest',
    5,
    (line) => {
      line.moves.zoneClaimant[1] = 1
    },
  ],
  [
    'a vacating zone holds or expects a carrier',
    2,
    (line) => {
      line.moves.zoneClaimant[0] = 0
    },
  ],
  [
    'a vacating zone holds or expects a carrier',
    5,
    (line) => {
      line.moves.zoneState[1] = VACATING
    },
  ],
  [
    'a zone is vacating with nobody on the way out',
    5,
    (line) => {
      line.moves.zoneState[4] = VACATING
    },
  ],
  [
    'a carrier is under way to another zone than it counts in',
    2,
    (line) => {
      line.moves.pathCarrier[0] = 1
    },
  ],
  [
    'a timer is missing or left over',
    2,
    (line) => {
      line.queue.cancel(ARRIVAL(line, 0))
    },
  ],
  [
    'a timer is missing or left over',
    5,
    (line) => {
      line.queue.times[ARRIVAL(line, 2)] = 9
      line.queue.schedule(ARRIVAL(line, 2))
    },
  ],
  [
    'a timer is missing or left over',
    5,
    (line) => {
      line.transfers.zoneChange[1] = TO_WAY_OUT_PENDING
    },
  ],
  [
    'a timer is missing or left over',
    7,
    (line) => {
      line.moves.carrierPhase[1] = DONE
    },
  ],
  [
    'a timer runs and is held',
    2,
    (line) => {
      line.slots.isHeldBack[ARRIVAL(line, 0)] = 1
    },
  ],
  [
    'a timer is left behind',
    2,
    (line) => {
      line.queue.times[ARRIVAL(line, 0)] = line.now
    },
  ],
  [
    'nothing changes under a carrier',
    9,
    (line) => {
      line.moves.carrierPhase[1] = CHANGING
      line.slots.isHeldBack[line.slots.workSlot] = 0
      line.queue.cancel(line.slots.workSlot)
    },
  ],
  [
    'the count of what is under way is wrong',
    2,
    (line) => {
      line.activity++
    },
  ],
  [
    'a zone is not held as often as it is stopped',
    2,
    (line) => {
      line.stops.zoneHeld[0] = 1
    },
  ],
  [
    'a zone is not held as often as it is stopped',
    15,
    (line) => {
      line.stops.zoneHeld[4] = 2
    },
  ],
  [
    'a zone is not held as often as it is stopped',
    2,
    (line) => {
      line.stops.sourceDown[1] = 1
    },
  ],
  [
    'a path is held without a stop, or stopped and not held',
    2,
    (line) => {
      line.stops.pathHeld[3] = 1
    },
  ],
  [
    'a path is held without a stop, or stopped and not held',
    15,
    (line) => {
      line.stops.pathHeld[4] = 0
    },
  ],
  [
    'a held move runs',
    15,
    (line) => {
      release(line, ARRIVAL(line, 3))
    },
  ],
  [
    'a held move runs',
    15,
    (line) => {
      release(line, line.slots.clearSlot + 3)
    },
  ],
  [
    'a station is not held as often as it is stopped',
    2,
    (line) => {
      line.stops.stationHeld[0] = 1
    },
  ],
  [
    'a station is not held as often as it is stopped',
    5,
    (line) => {
      line.stops.stationHeld[0] = 0
    },
  ],
  [
    'a station is not held as often as it is stopped',
    5,
    (line) => {
      line.stops.breaksNow = 1
    },
  ],
  [
    'held work runs',
    5,
    (line) => {
      release(line, line.slots.workSlot)
    },
  ],
]

/** A held timer set running by hand. */
function release(line: Line, slot: number): void {
  expect(line.slots.isHeldBack[slot]).toBe(1)
  line.slots.isHeldBack[slot] = 0
  line.queue.times[slot] = line.now + 50
  line.queue.schedule(slot)
}

describe('a rule that is broken is told', () => {
  test.each(RULES)('%s (at %d)', (message, instant, tamper) => {
    const line = lineAt(instant)
    checkInvariants(line)
    tamper(line)
    expect(() => checkInvariants(line)).toThrow(message)
  })

  test('a held transfer that changes', () => {
    const spec = smallLoop({
      zones: 4,
      start: [0],
      move: 4,
      clear: 3,
      transfers: { 1: { lift: 2, lower: 2 } },
      stops: [{ name: 'jam', on: { kind: 'transfer', index: 1 }, clock: 'calendar', after: 5, repair: 3 }],
    })
    const line = buildLine(spec)
    resetLine(line, 'seed', 0)
    while (line.now <= 5) {
      handleInstant(line)
      if (line.now === 5) break
      line.now = line.queue.times[line.queue.first()]!
    }
    checkInvariants(line)
    release(line, line.slots.changeSlot + 1)
    expect(() => checkInvariants(line)).toThrow('a held transfer changes')
  })
})

test('a claimed zone without a carrier is one that is set aside', () => {
  const spec = smallLoop({ zones: 5, start: [0], move: 4, clear: 3, transfers: { 1: { lift: 1, lower: 1, exitClear: true } } })
  const line = buildLine(spec)
  resetLine(line, 'seed', 0)
  handleInstant(line)
  checkInvariants(line)
  expect([line.moves.zoneState[2], line.moves.zoneClaimant[2], line.moves.zoneCarrier[2]]).toEqual([CLAIMED, 0, NONE])
})
