/** States by what a line is doing; MODEL.md §11. Each row sets the line by hand. */
import { describe, expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { carrierState, stationState, zoneState } from './judge.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from './result.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import * as state from '../state/moves.ts'

/** A station in Z1; carrier 0 in it with the given phase, or none. */
function lineWith(zone: number, phase: number | null, change: (line: Line) => void = () => {}): Line {
  const line = buildLine(smallLoop({ zones: 3, start: [0], stations: [{ at: 1, load: 1 }] }))
  resetLine(line, 'a', 0)
  line.moves.zoneCarrier[0] = NONE
  line.moves.zoneState[1] = zone
  if (phase !== null) {
    line.moves.zoneCarrier[1] = 0
    line.moves.carrierZone[0] = 1
    line.moves.carrierPhase[0] = phase
  }
  change(line)
  return line
}
const hold = (line: Line) => {
  line.stops.zoneHeld[1] = 1
}
const stop = (line: Line) => {
  line.stops.stationHeld[0] = 1
}
const pause = (line: Line) => {
  line.stops.breaksNow = 1
  line.stops.stationHeld[0] = 1
}

describe('station and zone', () => {
  test.each([
    ['working', 'working', lineWith(state.OCCUPIED, state.WORKING)],
    ['working', 'working', lineWith(state.OCCUPIED, state.RELEASING)],
    ['waiting for product', 'other', lineWith(state.OCCUPIED, state.WORK_PENDING)],
    ['blocked', 'blocked', lineWith(state.OCCUPIED, state.DONE)],
    ['exchanging', 'other', lineWith(state.OCCUPIED, state.CHANGING)],
    ['exchanging', 'claimed', lineWith(state.CLAIMED, state.MOVING)],
    ['exchanging', 'claimed', lineWith(state.CLAIMED, state.BRAKING)],
    ['exchanging', 'claimed', lineWith(state.CLAIMED, null)],
    ['exchanging', 'vacating', lineWith(state.VACATING, null)],
    ['starved', 'free', lineWith(state.FREE, null)],
    ['stopped', 'free', lineWith(state.FREE, null, stop)],
    ['stopped', 'working', lineWith(state.OCCUPIED, state.WORKING, stop)],
    ['stopped', 'stopped', lineWith(state.OCCUPIED, state.DONE, hold)],
    ['stopped', 'stopped', lineWith(state.FREE, null, hold)],
    ['working', 'stopped', lineWith(state.OCCUPIED, state.WORKING, hold)],
    ['working', 'stopped', lineWith(state.OCCUPIED, state.RELEASING, hold)],
    ['break', 'working', lineWith(state.OCCUPIED, state.WORKING, pause)],
    ['break', 'free', lineWith(state.FREE, null, pause)],
  ] as const)('%s, zone %s', (station, zone, line) => {
    expect(STATION_STATES[stationState(line, 0)]).toBe(station)
    expect(ZONE_STATES[zoneState(line, 1)]).toBe(zone)
  })

  test('a station that works in breaks has none', () => {
    const line = lineWith(state.OCCUPIED, state.WORKING, (l) => {
      l.stops.breaksNow = 1
      l.stops.stationBreaks[0] = 0
    })
    expect(STATION_STATES[stationState(line, 0)]).toBe('working')
  })
})

test('carriers', () => {
  const at = (phase: number, serial: number) => {
    const line = lineWith(state.OCCUPIED, phase)
    line.goods.carrierSerial[0] = serial
    return CARRIER_STATES[carrierState(line, 0)]
  }
  expect([state.MOVING, state.LOOKING, state.BRAKING].map((phase) => at(phase, 0))).toEqual(['moving', 'moving', 'moving'])
  expect([state.WORKING, state.RELEASING].map((phase) => at(phase, NONE))).toEqual(['worked on', 'worked on'])
  expect([state.DONE, state.CHANGING, state.CHANGE_PENDING, state.WORK_PENDING].map((phase) => at(phase, 3))).toEqual(
    Array(4).fill('waiting with product'),
  )
  expect(at(state.DONE, NONE)).toBe('waiting empty')
})
