/** Timelines of arriving products, worked out by hand from MODEL.md §8. */
import { describe, expect, test } from 'vitest'
import { smallLoop, tell, timeline, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import { simulate } from '../simulate.ts'
import type { LineSpec, SupplySpec } from '../spec.ts'

const list = (...instants: number[]): SupplySpec => ({ name: 'supply', arrivals: { kind: 'list', instants }, queueLimit: null })
const every = (seconds: number, queueLimit: number | null = null): SupplySpec => ({
  name: 'supply',
  arrivals: { kind: 'every', seconds: { kind: 'constant', value: seconds } },
  queueLimit,
})
const GIVEN = { move: 4, clear: 3 }
const supplied = (wish: Wish, supply: SupplySpec): LineSpec => ({ ...smallLoop({ ...GIVEN, ...wish }), supply })
const words = (spec: LineSpec): string[] => timeline(spec).filter((line) => !/ (clear|leave|rest) /.test(line))

// one carrier on four zones, load in Z1 (3 s), unload in Z3 (2 s)
const LOOP: Wish = {
  zones: 4,
  start: [0],
  stations: [
    { at: 1, load: 3 },
    { at: 3, unload: 2 },
  ],
}

describe('a list of times', () => {
  test('the load waits for the product; the first arrival comes at its instant', () => {
    // at rest in Z1 at 4; product at 10: load 10–13; Z2 17, Z3 21, unload to 23, Z0 27, Z1 31; the next product came at 12
    expect(words(supplied({ ...LOOP, until: 40 }, list(10, 12)))).toEqual([
      '10 product comes to supply 0',
      '10 load begins S1 c0',
      '10 take p0 c0',
      '12 product comes to supply 0',
      '13 load ends S1 c0',
      '21 unload begins S3 c0',
      '23 unload ends S3 c0',
      '23 off p0 c0',
      '31 load begins S1 c0',
      '31 take p1 c0',
      '34 load ends S1 c0',
    ])
  })

  test('what is told of it: waits 0 and 19 s; queue 0 … 12, 1 to 31; waiting for product 4–10', () => {
    const { result } = tell(supplied({ ...LOOP, until: 40 }, list(10, 12)))
    expect(result.supplies).toEqual([
      {
        name: 'supply',
        arrivals: 2,
        turnedAway: 0,
        queueMean: 19 / 40,
        queueMax: 1,
        waiting: { count: 2, mean: 9.5, sd: Math.sqrt(180.5), min: 0, max: 19 },
      },
    ])
    expect(result.stations[0]!.seconds['waiting for product']).toBe(6)
  })

  test('when it has run out the line ends out of products', () => {
    // unloaded at 23, at rest in Z1 at 31
    const { end } = tell(supplied({ ...LOOP, until: 100 }, list(4))).result
    expect(end).toEqual({ reason: 'out of products', atSeconds: 25, waits: [], cycle: [], unmanned: [] })
  })

  test('a line that waits for a product that is to come does not stand still', () => {
    expect(tell(supplied({ ...LOOP, until: 60 }, list(50))).result.end.reason).toBe('end of window')
  })
})

describe('a limited queue', () => {
  test('who finds it full is turned away, and the clock of arrivals goes on', () => {
    // arrivals at 3, 6, 9 …; one place. 3: queued; 4: rest in Z1, load starts, place free; 6: queued; 9, 12 … 30 away; next load at 31 − from Z3 18–20
    // load 4–7, Z2 11, Z3 15, unload to 17, Z0 21, Z1 25: load 25–28; arrivals 9 … 24 are six turned away; 27 is queued
    const { result } = tell(supplied({ ...LOOP, until: 29 }, every(3, 1)))
    expect(result.supplies[0]).toMatchObject({ arrivals: 9, turnedAway: 6, queueMax: 1 })
    // waits 1 (3 → 4) and 19 (6 → 25)
    expect(result.supplies[0]!.waiting).toMatchObject({ count: 2, mean: 10, min: 1, max: 19 })
  })

  test('a product that is set aside stays in the queue until its load starts', () => {
    // the operator walks 5 s from 4 on, so that the product of 3 holds the one place until 9: those of 6 and of 9 itself (arrivals come before starts) are turned away
    const spec = { ...supplied({ ...LOOP, until: 10 }, every(3, 1)) }
    const walked: LineSpec = {
      ...spec,
      operators: [{ name: 'op0', stations: [0, 1], start: 1 }],
      walks: [{ between: [0, 1], seconds: 5 }],
    }
    expect(tell(walked).result.supplies[0]).toMatchObject({ arrivals: 3, turnedAway: 2 })
    expect(words(walked)).toContain('6 product turned away from supply 0')
  })
})

test('of two load stations that wait the lower one gets the product, and one that is held gets none', () => {
  // c0 in Z1 and c1 in Z3 from 4; S1 is down 2–12; products at 5 and 6: the first to S3, the second to S1 at 12
  const wish: Wish = {
    zones: 6,
    start: [0, 2],
    stations: [
      { at: 1, load: 3 },
      { at: 3, load: 3 },
      { at: 5, unload: 1 },
    ],
    stops: [{ name: 'jam', on: { kind: 'station', index: 0 }, clock: 'calendar', after: 2, repair: 10 }],
    until: 13,
  }
  expect(words(supplied(wish, list(5, 6))).filter((line) => line.includes('begins'))).toEqual([
    '5 load begins S3 c1',
    '12 load begins S1 c0',
  ])
})

test('a station of its own supply, and the stream named by it', () => {
  const spec = supplied({ ...LOOP, until: 400 }, list())
  const random: SupplySpec = {
    name: 'supply/S1',
    arrivals: { kind: 'every', seconds: { kind: 'exponential', mean: 40 } },
    queueLimit: null,
  }
  const own: LineSpec = { ...spec, stations: spec.stations.map((station, s) => (s === 0 ? { ...station, supply: random } : station)) }
  const { result } = tell(own)
  expect(result.supplies.map(({ name }) => name)).toEqual(['supply', 'supply/S1'])
  expect(result.supplies[1]!.arrivals).toBeGreaterThan(2)
  const renamed = {
    ...own,
    stations: own.stations.map((station) => (station.supply === null ? station : { ...station, supply: { ...random, name: 'supply/S2' } })),
  }
  expect(simulate(renamed, { seed: 'hand', replication: 0 }).outputSeconds).not.toEqual(result.outputSeconds)
})
