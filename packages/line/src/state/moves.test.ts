import { expect, test } from 'vitest'
import { CLEAR_KNOWN, CLEAR_NOW, CLEAR_TIMED, isClearOver } from './moves.ts'

test('a clear is over unseen from its instant on, if it has no timer and has not been made good', () => {
  const moves = {
    zoneClearing: Uint8Array.of(CLEAR_NOW, CLEAR_TIMED, CLEAR_KNOWN, CLEAR_KNOWN),
    clearAt: Float64Array.of(1, 1, 5, 6),
  }
  expect([0, 1, 2, 3].map((zone) => isClearOver({ moves, now: 5 }, zone))).toEqual([false, false, true, false])
})
