/** Timelines of safety stops, worked out by hand from MODEL.md §7. */
import { describe, expect, test } from 'vitest'
import { smallLoop, tell, timeline, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { simulate } from '../simulate.ts'
import type { LineSpec, SectionSpec } from '../spec.ts'

const LOOP: Wish = {
  zones: 4,
  start: [0],
  move: 4,
  clear: 3,
  stations: [
    { at: 1, load: 1 },
    { at: 3, unload: 1 },
  ],
  until: 40,
}

function watched(wish: Wish, probability: number, reset: number, sections?: readonly SectionSpec[], which = 0): LineSpec {
  const spec = smallLoop(wish)
  const safetyStop = { probability, resetSeconds: { kind: 'constant', value: reset } as const }
  return {
    ...spec,
    sections: sections ?? spec.sections,
    stations: spec.stations.map((station, s) => (s === which ? { ...station, safetyStop } : station)),
  }
}
const numbers = (lines: readonly string[], word: string): number[] =>
  lines.filter((line) => line.includes(word)).map((line) => Number(line.split(' ')[0]))

describe('somebody in the way', () => {
  const spec = watched(LOOP, 1, 10)
  const { lines, result } = tell(spec)

  test('the section stops within the move, for the time to the reset; the move then has the time it had left', () => {
    const stops = numbers(lines, 'stop safety')
    const resets = numbers(lines, 'reset safety')
    // moves that touch Z1: 0 → 1 from 0 on, 1 → 2 after it
    expect(stops[0]).toBeGreaterThan(0)
    expect(stops[0]).toBeLessThan(4)
    expect(resets[0]! - stops[0]!).toBe(10)
    expect(lines).toContain('14 rest Z1 c0')
    // loaded 14–15: leaves at 15, stopped for 10 s again: at rest in Z2 at 29; the moves from there touch Z1 no more: Z3 33
    expect(stops[1]).toBeGreaterThan(15)
    expect(stops[1]).toBeLessThan(19)
    expect(lines).toContain('29 rest Z2 c0')
    expect(lines).toContain('33 rest Z3 c0')
    expect(stops).toHaveLength(2)
  })

  test('it is told by cause, and counted', () => {
    expect(result.safetyStops).toEqual([{ name: 'S1', count: 2, seconds: 20 }])
    expect(result.zones[3]!.stoppedBy).toEqual([{ cause: 'safety stop S1', seconds: 20 }])
    expect(result.zones[0]!.seconds.stopped).toBe(20)
  })
})

test('nobody in the way: the draws are taken and nothing else is different', () => {
  const { events: _, safetyStops: __, ...never } = tell(watched(LOOP, 0, 10)).result
  const { events: ___, safetyStops: ____, ...plain } = tell(smallLoop(LOOP)).result
  expect(never).toEqual(plain)
})

test('only the section of the station stops', () => {
  // Z0 and Z1 in one section, Z2 and Z3 in another; c1 moves on in the other one
  const sections = [
    { name: 'a', zones: [0, 1] },
    { name: 'b', zones: [2, 3] },
  ]
  const { result } = tell(watched({ ...LOOP, start: [0, 2] }, 1, 10, sections))
  expect(result.zones.map(({ seconds }) => seconds.stopped > 0)).toEqual([true, true, false, false])
})

test('of two watching stations at the ends of a move the one it leads to draws', () => {
  const spec = watched(
    {
      ...LOOP,
      zones: 2,
      stations: [
        { at: 0, load: 1 },
        { at: 1, unload: 1 },
      ],
      until: 8,
    },
    1,
    1,
  )
  const both: LineSpec = { ...spec, stations: spec.stations.map((station) => ({ ...station, safetyStop: spec.stations[0]!.safetyStop })) }
  // 0 → 1 from 0, stop of S1 for 1 s: at rest at 5
  expect(timeline(both, 'stop')[0]).toContain('safety S1')
})

test('a station zone in no section is an error', () => {
  const spec = watched(LOOP, 0.5, 10, [{ name: 'a', zones: [2, 3] }])
  expect(() => buildLine(spec)).toThrow('station S1 has a safety stop, but its zone is in no section')
})

// A move stops with probability p, for the mean reset: binomial count of the moves that touch the zone.
test('the share of moves stopped is the probability', () => {
  const spec = watched({ ...LOOP, start: [0, 2], until: 100_000 }, 0.1, 5)
  const { safetyStops, zones } = simulate(spec, { seed: 'hand', replication: 0 })
  const moves = zones[0]!.movesOut + zones[1]!.movesOut
  // false alarms: 4 standard deviations, 0.006 % of seeds; this seed is fixed
  expect(Math.abs(safetyStops[0]!.count - 0.1 * moves)).toBeLessThan(4 * Math.sqrt(moves * 0.09))
})
