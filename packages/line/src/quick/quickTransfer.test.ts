import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { ZONE_SINCE, ZONE_WIDTH } from '../telling/collect.ts'
import { canLeave, claimBehind, isHeldAhead, waitsBehind } from './quickTransfer.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { CLAIMED, FREE, OCCUPIED } from '../state/moves.ts'

const EXIT = { lift: 1, lower: 1, out: 'high', exitClear: true } as const

/** Z2 and Z3 are exit-clear transfers; carriers stand where they are told to. */
function lineWith(...start: number[]): Line {
  const line = buildLine(smallLoop({ zones: 7, start, transfers: { 2: EXIT, 3: EXIT } }))
  resetLine(line, 'a', 0)
  return line
}

test('a carrier leaves towards exit-clear transfers only if all is free up to the next place to stand', () => {
  expect(canLeave(lineWith(1), 1)).toBe(true)
  expect(canLeave(lineWith(1, 4), 1)).toBe(false)
  expect(canLeave(lineWith(1, 5), 1)).toBe(true)
})

test('what is set aside behind them is claimed, and counts so', () => {
  const line = lineWith(1)
  line.now = 3
  claimBehind(line, 2, 0)
  expect([...line.moves.zoneState.subarray(0, 7)]).toEqual([FREE, OCCUPIED, FREE, CLAIMED, CLAIMED, FREE, FREE])
  expect([...line.moves.zoneClaimant.subarray(2, 6)]).toEqual([NONE, 0, 0, NONE])
  expect([2, 3, 4, 5].map((zone) => line.collector.zoneSeconds[zone * ZONE_WIDTH + ZONE_SINCE])).toEqual([0, 3, 3, 0])
})

test('a stop counts from the zone up to the one that is set aside', () => {
  for (const [held, holds] of [
    [0, false],
    [1, true],
    [2, true],
    [3, true],
    [4, true],
    [5, false],
  ] as const) {
    const line = lineWith(1)
    line.stops.zoneHeld[held] = 1
    expect([held, isHeldAhead(line, 1)]).toEqual([held, holds])
  }
})

test('who waits for a zone behind empty exit-clear transfers stands before them', () => {
  expect(waitsBehind(lineWith(1), 4)).toBe(1)
  expect(waitsBehind(lineWith(3), 4)).toBe(3)
  expect(waitsBehind(lineWith(1), 6)).toBe(5)
})
