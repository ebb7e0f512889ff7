/** Where the time of a station goes, worked out by hand from MODEL.md §11. */
import { describe, expect, test } from 'vitest'
import { smallLoop, tell } from '../../../../tests/helpers/smallLoop.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

describe('station time', () => {
  test('a carrier that stands without a duty blocks the station', () => {
    // move 4, clear 3. c1 loads in Z2 from 4 to 14, Z2 is clear at 17. c0 leaves Z0 at 3, stands in Z1 from 7 to 17, empty at a work station.
    const spec = smallLoop({
      zones: 4,
      start: [0, 1],
      move: 4,
      clear: 3,
      stations: [
        { at: 1, work: 3 },
        { at: 2, load: 10 },
      ],
      until: 17,
    })
    const [work, load] = tell(spec).result.stations
    expect(spent(work!.seconds)).toEqual({ blocked: 10, exchanging: 7 })
    expect(work!.longestBlockSeconds).toBe(10)
    expect(work!.cycles).toBe(0)
    // exchanging 0–4 and 14–17
    expect(spent(load!.seconds)).toEqual({ working: 10, exchanging: 7 })
    expect(load!.cycles).toBe(1)
  })

  test('the longest block is cut at both ends of the window', () => {
    const block = (warmup: number, until: number) =>
      tell(
        smallLoop({
          zones: 4,
          start: [0, 1],
          move: 4,
          clear: 3,
          stations: [
            { at: 1, work: 3 },
            { at: 2, load: 10 },
          ],
          warmup,
          until,
        }),
      ).result.stations[0]!
    // blocked from 7 to 17
    expect(block(9, 12).longestBlockSeconds).toBe(3)
    expect(block(9, 12).seconds.blocked).toBe(3)
    expect(block(5, 12).longestBlockSeconds).toBe(5)
    expect(block(12, 30).longestBlockSeconds).toBe(5)
  })

  test('a done carrier that cannot leave blocks; a carrier on its way in is an exchange', () => {
    // move 4, clear 3, load 2 in Z1 and 10 in Z2 (the second carrier, empty, loads in Z2).
    // c1 loads in Z2 from 4 to 14, out at 14, clear 17. c0: leaves at 3, loads in Z1 from 7 to 9, is done, leaves at 17; Z1 clear at 20, then starved.
    const spec = smallLoop({
      zones: 4,
      start: [0, 1],
      move: 4,
      clear: 3,
      stations: [
        { at: 1, load: 2 },
        { at: 2, load: 10 },
      ],
      until: 21,
    })
    // c1, loaded, is in Z3 at 18 and in Z0 at 22; from 20 to 21 Z1 is free and nobody on the way
    expect(spent(tell(spec).result.stations[0]!.seconds)).toEqual({ working: 2, blocked: 8, exchanging: 10, starved: 1 })
  })
})
