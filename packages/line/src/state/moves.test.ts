import { expect, test } from 'vitest'
import { CLEAR_KNOWN, CLEAR_NOW, CLEAR_TIMED, isClearOver } from './moves.ts'

test('a clear is over unseen from its instant on, if it has no timer and has not been made good', () => {
  const moves = {
    zoneClearing: Uint8Array.of(CLEAR_NOW, CLEAR_TIMED, CLEAR_KNOWN, CLEAR_KNOWN),
  }
  const line = { now: 5, moves, queue: { times: Float64Array.of(0, 1, 1, 5, 6) }, slots: { clearSlot: 1 } }
  expect([0, 1, 2, 3].map((zone) => isClearOver(line, zone))).toEqual([false, false, true, false])
})
