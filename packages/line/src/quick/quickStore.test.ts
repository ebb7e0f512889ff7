/** That moves into the store and out of it are what move.ts makes of them, column by column: moveStart.test.ts. */
import { expect, test } from 'vitest'
import { chain, type PathWish, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { buildLine } from '../build/build.ts'
import { resetLine } from '../build/start.ts'
import { handleInstant } from '../instant/instant.ts'
import type { Line } from '../state/line.ts'
import { DONE, MOVING } from '../state/moves.ts'
import { runQuick } from './quick.ts'
import { endsInStore } from './quickStore.ts'
import { makeQuick, type Quick } from './quickZones.ts'

/** Three carriers in the store of two zones: 2 s a move, 1 s a clear. The first one leaves at 0. */
function openLine(more: PathWish[] = []): { line: Line; quick: Quick } {
  const line = buildLine(
    smallGraph({ zones: 2, start: { count: 3, rule: 'store' }, paths: [...chain('store', 0, 1, 'store'), ...more], move: 2, clear: 1 }),
  )
  resetLine(line, 'a', 0)
  handleInstant(line)
  return { line, quick: makeQuick(line)! }
}

const stored = ({ moves, store }: Line): number[] => [moves.storeCount, moves.zoneCarrier[store]!]

// c0: Z0 2, Z1 4, store 6. Z0 is clear at 3: c1 is in Z0 at 5, in Z1 at 7. Z0 is clear at 6, where c2 leaves; c0, back at 6, stays
test('the next carrier leaves the store when the first zone is clear; one that comes back waits behind those that wait', () => {
  const { line, quick } = openLine()
  expect(stored(line)).toEqual([2, 1])
  runQuick(line, quick, 3)
  expect([...stored(line), line.moves.carrierPhase[1], line.queue.times[line.slots.arrivalSlot]]).toEqual([1, 2, MOVING, 5])
  runQuick(line, quick, 4)
  expect([line.moves.carrierZone[0], line.moves.carrierPhase[0], line.queue.times[line.slots.storeSlot]]).toEqual([line.store, MOVING, 6])
  runQuick(line, quick, 6)
  expect([...stored(line), line.moves.carrierPhase[0], line.moves.carrierSince[0]]).toEqual([1, 0, DONE, 6])
  // in the store, or on the way in: 2 for 0–3, 1 for 3–4, 2 for 4–6
  expect(line.collector.stored.mean(6, 6)).toBe((2 * 3 + 1 + 2 * 2) / 6)
})

test('where two ways lead out of the store, who leaves it is not for here to say', () => {
  const { line, quick } = openLine([{ from: 'store', to: 1 }])
  const before = [...stored(line), line.events]
  expect([endsInStore(line, quick, 0), ...stored(line), line.events]).toEqual([false, ...before])
})
