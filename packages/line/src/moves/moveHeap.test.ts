import fc from 'fast-check'
import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { takeFirst, wake } from './moveHeap.ts'
import { resetLine } from '../build/start.ts'
import { DONE, MOVING } from '../state/moves.ts'

const line = buildLine(smallLoop({ zones: 20, start: Array.from({ length: 18 }, (_, zone) => zone), move: 1, clear: 1 }))

// Reference: a list sorted by (since, place).
test('places come out by how long their carriers wait, then by place, whatever the order in which they went in', () => {
  const step = fc.record({ place: fc.nat({ max: 17 }), since: fc.nat({ max: 4 }) })
  fc.assert(
    fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
      resetLine(line, 'seed', 0)
      while (line.moves.moveList.length > 0) takeFirst(line)
      const known = new Map<number, number>()
      for (const { place, since } of steps) {
        line.moves.carrierSince[line.moves.zoneCarrier[place]!] = since
        wake(line, place)
        known.set(place, since)
      }
      const sorted = [...known].sort(([a, x], [b, y]) => x - y || a - b).map(([place]) => place)
      expect(Array.from({ length: known.size }, () => takeFirst(line))).toEqual(sorted)
      expect(line.moves.moveList.length).toBe(0)
    }),
    { seed: 1, numRuns: 200 },
  )
})

test('an empty place, and one whose carrier moves, are not taken in', () => {
  resetLine(line, 'seed', 0)
  while (line.moves.moveList.length > 0) takeFirst(line)
  wake(line, 19)
  line.moves.carrierPhase[0] = MOVING
  wake(line, 0)
  expect(line.moves.moveList.length).toBe(0)
  line.moves.carrierPhase[0] = DONE
  wake(line, 0)
  expect(takeFirst(line)).toBe(0)
})
