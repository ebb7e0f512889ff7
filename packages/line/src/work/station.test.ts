/** Timelines of stations, worked out by hand from MODEL.md §5. */
import { describe, expect, test } from 'vitest'
import { smallLoop, tell, timeline } from '../../../../tests/helpers/smallLoop.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

describe('duties', () => {
  test('unload, load, work and release follow one another at one station', () => {
    // move 4, clear 3. First arrival at 4, empty: load to 7, work to 12, release to 13. Then Z2 at 17, Z0 at 21, Z1 at 25:
    // unload to 27 (output, 23 s after its load began), load to 30, work to 35, release to 36.
    const spec = smallLoop({
      zones: 3,
      start: [0],
      move: 4,
      clear: 3,
      stations: [{ at: 1, unload: 2, load: 3, work: 5, release: 1 }],
      until: 36,
    })
    const { result, lines } = tell(spec)
    expect(lines.filter((line) => !line.includes('clear'))).toEqual([
      '0 leave Z0 c0',
      '4 rest Z1 c0',
      '4 load begins S1 c0',
      '4 take p0 c0',
      '7 load ends S1 c0',
      '7 work begins S1 c0',
      '12 work ends S1 c0',
      '12 release begins S1 c0',
      '13 release ends S1 c0',
      '13 leave Z1 c0',
      '17 rest Z2 c0',
      '17 leave Z2 c0',
      '21 rest Z0 c0',
      '21 leave Z0 c0',
      '25 rest Z1 c0',
      '25 unload begins S1 c0',
      '27 unload ends S1 c0',
      '27 off p0 c0',
      '27 load begins S1 c0',
      '27 take p1 c0',
      '30 load ends S1 c0',
      '30 work begins S1 c0',
      '35 work ends S1 c0',
      '35 release begins S1 c0',
      '36 release ends S1 c0',
      '36 leave Z1 c0',
    ])
    expect(result.output).toBe(1)
    expect(result.loads).toBe(2)
    expect(result.timeInLine).toEqual({ count: 1, mean: 23, sd: null, min: 23, max: 23 })
    // one product from 4 to 36, one after the other without a gap
    expect(result.productsInLineMean).toBe(32 / 36)
    // working 9 + 11; exchanging 0–4, 13–16 and 21–25; starved 16–21
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 20, exchanging: 11, starved: 5 })
    expect(result.stations[0]!.cycles).toBe(2)
    // lap: starts out of the unload zone at 13 and 36
    expect(result.lap).toEqual({ count: 1, mean: 23, sd: null, min: 23, max: 23 })
    // c0: moving 0–4 and 13–25, worked on 4–13 and 25–36
    expect(spent(result.carriers[0]!.seconds)).toEqual({ moving: 16, 'worked on': 20 })
  })

  test('an empty carrier passes a work station, a loaded one a load-only station', () => {
    // Looks: Z1 5, Z2 9; in Z3 it loads: M(speed, rest) = 5: 14 to 24. From rest: Z4 29, Z0 33; in Z1 it works: 38 to 44. Z2 49, Z3 53: loaded, passes; Z4 57.
    const spec = smallLoop({
      zones: 5,
      start: [0],
      stations: [
        { at: 1, work: 6 },
        { at: 3, load: 10 },
      ],
      until: 57,
    })
    expect(timeline(spec, 'leave', 'rest', 'load', 'work')).toEqual([
      '0 leave Z0 c0',
      '5 leave Z1 c0 at speed',
      '9 leave Z2 c0 at speed',
      '14 rest Z3 c0',
      '14 load begins S3 c0',
      '24 load ends S3 c0',
      '24 leave Z3 c0',
      '29 leave Z4 c0 at speed',
      '33 leave Z0 c0 at speed',
      '38 rest Z1 c0',
      '38 work begins S1 c0',
      '44 work ends S1 c0',
      '44 leave Z1 c0',
      '49 leave Z2 c0 at speed',
      '53 leave Z3 c0 at speed',
      '57 leave Z4 c0 at speed',
    ])
  })

  test('a task of 0 s and a duty without a task stop the carrier', () => {
    // rest in Z1 at M(rest, rest) = 6, and from rest again: Z2 11, Z3 15, Z0 19. The second time it is loaded: passes Z1 at 23.
    const stops = (load: true | 0) =>
      timeline(smallLoop({ zones: 4, start: [0], stations: [{ at: 1, load }], until: 23 }), 'leave', 'rest', 'load')
    const expected = [
      '0 leave Z0 c0',
      '6 rest Z1 c0',
      '6 load begins S1 c0',
      '6 load ends S1 c0',
      '6 leave Z1 c0',
      '11 leave Z2 c0 at speed',
      '15 leave Z3 c0 at speed',
      '19 leave Z0 c0 at speed',
      '23 leave Z1 c0 at speed',
    ]
    expect(stops(true)).toEqual(expected)
    expect(stops(0)).toEqual(expected)
  })

  test('of two carriers that arrive at one instant the station with the lower index takes the lower serial', () => {
    // S2 is station 0, S0 is station 1; move 1
    const spec = smallLoop({
      zones: 4,
      start: [1, 3],
      move: 1,
      clear: 1,
      stations: [
        { at: 2, load: 3 },
        { at: 0, load: 3 },
      ],
      until: 1,
    })
    expect(timeline(spec, 'take')).toEqual(['1 take p0 c0', '1 take p1 c1'])
    expect(timeline({ ...spec, stations: [...spec.stations].reverse() }, 'take')).toEqual(['1 take p0 c1', '1 take p1 c0'])
  })
})

describe('tasks', () => {
  test('a shared task is done at the first station that has it; the second lap has no work', () => {
    // move 1, clear 1. Z0 at 1: loaded. S1: weld 3: 2 to 5. S2 has weld too: nothing to do at 6. Then Z3 7, Z0 8 (loaded), Z1 9, Z2 10.
    const weld = (first: number, second: Record<string, number>) =>
      timeline(
        smallLoop({
          zones: 4,
          start: [3],
          move: 1,
          clear: 1,
          stations: [
            { at: 0, load: true },
            { at: 1, work: { weld: first } },
            { at: 2, work: second },
          ],
          until: 13,
        }),
        'work',
        'leave',
      )
    expect(weld(3, { weld: 5 })).toEqual([
      '0 leave Z3 c0',
      '1 leave Z0 c0',
      '2 work begins S1 c0',
      '5 work ends S1 c0',
      '5 leave Z1 c0',
      '6 leave Z2 c0',
      '7 leave Z3 c0',
      '8 leave Z0 c0',
      '9 leave Z1 c0',
      '10 leave Z2 c0',
      '11 leave Z3 c0',
      '12 leave Z0 c0',
      '13 leave Z1 c0',
    ])
    // with a second task beside it only that one is left
    expect(weld(3, { weld: 5, glue: 2 }).slice(5, 8)).toEqual(['6 work begins S2 c0', '8 work ends S2 c0', '8 leave Z2 c0'])
    // the times of a duty add up: 2 + 5
    expect(weld(3, { glue: 2, paint: 5 }).slice(5, 8)).toEqual(['6 work begins S2 c0', '13 work ends S2 c0', '13 leave Z2 c0'])
  })

  test('a load task without a time for the variant counts 0 s; elsewhere such a variant has no duty', () => {
    // move 1, clear 1; variants 0 and 1 in turn. p0: loads 1 to 5, no work; off at 7. p1: loads in 0 s at 8, works 9 to 14, off at 15.
    const spec = smallLoop({
      zones: 3,
      start: [2],
      move: 1,
      clear: 1,
      variants: 2,
      mix: { kind: 'pattern', sequence: [0, 1] },
      stations: [
        { at: 0, load: { fit: [4, null] } },
        { at: 1, work: { weld: [null, 5] } },
        { at: 2, unload: true },
      ],
      until: 15,
    })
    expect(timeline(spec, 'load', 'work', 'off', 'leave')).toEqual([
      '0 leave Z2 c0',
      '1 load begins S0 c0',
      '5 load ends S0 c0',
      '5 leave Z0 c0',
      '6 leave Z1 c0',
      '7 off p0 c0',
      '7 leave Z2 c0',
      '8 load begins S0 c0',
      '8 load ends S0 c0',
      '8 leave Z0 c0',
      '9 work begins S1 c0',
      '14 work ends S1 c0',
      '14 leave Z1 c0',
      '15 off p1 c0',
      '15 leave Z2 c0',
    ])
  })

  test('an unload whose task the product has had elsewhere takes it off in no time', () => {
    // move 1, clear 1: loaded at 1; strip 2 s in Z1: 2 to 4; off in Z2 at 5, at once
    const spec = smallLoop({
      zones: 3,
      start: [2],
      move: 1,
      clear: 1,
      stations: [
        { at: 0, load: true },
        { at: 1, work: { strip: 2 } },
        { at: 2, unload: { strip: 7 } },
      ],
      until: 6,
    })
    expect(timeline(spec, 'unload', 'work', 'off')).toEqual([
      '2 work begins S1 c0',
      '4 work ends S1 c0',
      '5 unload begins S2 c0',
      '5 unload ends S2 c0',
      '5 off p0 c0',
    ])
  })

  test('a variant without a time at the unload tasks is not taken off there', () => {
    // variant 1 only: loaded at 1, then round and round every 3 s
    const spec = smallLoop({
      zones: 3,
      start: [2],
      move: 1,
      clear: 1,
      variants: 2,
      mix: { kind: 'pattern', sequence: [1] },
      stations: [
        { at: 0, load: true },
        { at: 2, unload: { strip: [1, null] } },
      ],
      until: 30,
    })
    const { result } = tell(spec)
    expect([result.loads, result.output, result.stations[1]!.cycles]).toEqual([1, 0, 0])
  })
})
