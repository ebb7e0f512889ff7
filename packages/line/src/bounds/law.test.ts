import { describe, expect, test } from 'vitest'
import type { LineSpec } from '../spec.ts'
import { loopLine } from '../builder/sketchedLine.ts'
import { law, lawOrNull } from './law.ts'
import { lawTerms } from './lawTerms.ts'
import { baseLine, constant, givenLoop, station } from '../../../../tests/helpers/boundLoops.ts'

// Baccelli, Cohen, Olsder & Quadrat, Synchronization and Linearity, Wiley 1992, ch. 2–3; Karp, Discrete Math. 23 (1978) 309–311 (from memory).
// Values: linear programme = Karp's algorithm = max-plus recursion, made outside this project.
const CONSTANT_TIMES = [
  [
    'few carriers',
    givenLoop(
      10,
      [
        [0, 5],
        [5, 7],
      ],
      2,
      2,
    ),
    2,
    0.0625,
    'carrier-limited',
  ],
  [
    'a slow station',
    givenLoop(
      10,
      [
        [0, 5],
        [5, 7],
      ],
      2,
      2,
    ),
    5,
    0.09090909090909,
    'station-limited',
  ],
  ['plain zones, all three terms equal', givenLoop(10, [], 1, 1), 5, 0.5, 'station-limited'],
  [
    'a late clear, few holes',
    givenLoop(
      12,
      [
        [0, 6],
        [4, 9],
        [8, 2],
      ],
      3,
      4,
    ),
    10,
    0.04166666666667,
    'space-limited',
  ],
  [
    'unequal zones',
    givenLoop(
      8,
      [
        [0, 4],
        [3, 11],
        [5, 6],
      ],
      [3, 2, 2, 4, 1, 2, 3, 2],
      [3, 2, 1, 5, 1, 2, 2, 2],
    ),
    5,
    0.05555555555556,
    'station-limited',
  ],
  [
    'one carrier',
    givenLoop(
      6,
      [
        [0, 4],
        [3, 7],
      ],
      1.5,
      1.5,
    ),
    1,
    0.05,
    'carrier-limited',
  ],
] as const

describe('constant times: the law is exact', () => {
  test.each(CONSTANT_TIMES)('%s', (_, spec, carriers, rate, regime) => {
    const terms = lawTerms(law(spec), carriers)
    expect(terms.rate).toBeCloseTo(rate, 12)
    expect(terms.regime).toBe(regime)
    expect(terms.exact).toBe(true)
  })

  test('a full loop makes nothing', () => {
    const terms = lawTerms(law(givenLoop(6, [], 1, 1)), 6)
    expect(terms.rate).toBe(0)
    expect(terms.regime).toBe('space-limited')
  })

  test('clears of 0 s set no limit by space', () => {
    const terms = lawTerms(law(givenLoop(6, [[0, 4]], 1, 0)), 5)
    expect(terms.spaceLimited).toBeNull()
    expect(terms.rate).toBe(1 / 5)
  })

  test('a lap that takes no time is refused', () => {
    const [loop, none] = [givenLoop(6, [], 1, 1), constant(0)]
    const still = { ...loop, paths: loop.paths.map((path) => ({ ...path, moveSeconds: none, clearSeconds: none })) }
    expect(() => law(still)).toThrow(/a lap takes no time/)
  })
})

// Worked out by hand from mechanics: move rest to rest d/v + v/a = 6.625 s, clear (1.2 − 0.078125)/v + v/2a + ε = 4.95 s; task means over mix and options
// sum to 374.76 s; seven stations and four corners stop a carrier, each stop costs v/a = 0.625 s.
describe('a loop with ramps and corners: an estimate', () => {
  const base = law(baseLine('single'))

  test('lap of one carrier', () => {
    expect(base.lapSeconds).toBeCloseTo(374.76 + 7 * 2 + 22 * 6 + 11 * 0.625 + 4 * 2, 4)
    expect(base.lapSeconds).toBeCloseTo(535.635, 4)
  })

  test('slowest exchange: the tightness test', () => {
    expect(base.exchangeSeconds).toBeCloseTo(61.8 + 2 + 6.625 + 4.95, 4)
    expect(base.constraintStation).toBe(5)
    expect(base.constraintZone).toBe(16)
  })

  test('lap of one hole, over the zones where a carrier may wait', () => {
    expect(base.storageZones).toBe(18)
    expect(base.holeLapSeconds).toBeCloseTo(18 * 4.95, 4)
  })

  test('knees', () => {
    expect(base.carriersLow).toBe(8)
    expect(base.carriersHigh).toBe(16)
  })

  test('rates per hour on the three branches', () => {
    expect(lawTerms(base, 5).rate * 3600).toBeCloseTo(33.6, 2)
    expect(lawTerms(base, 12).rate * 3600).toBeCloseTo(47.76, 2)
    expect(lawTerms(base, 17).rate * 3600).toBeCloseTo(40.4, 2)
    expect(lawTerms(base, 18).rate).toBe(0)
  })

  test('it says why it is an estimate', () => {
    expect(base.exact).toBe(false)
    expect(base.estimateReasons).toEqual(['ramps', 'random times', 'exit-clear transfers', 'products with different times'])
  })

  test('train release exchanges sooner', () => {
    expect(law(baseLine('train')).exchangeSeconds).toBeCloseTo(63.8 + 6.625 + 0.3, 4)
  })

  test('one unit a lap', () => {
    expect(base.unitsPerLap).toBeCloseTo(1, 12)
  })
})

test('a transfer that is no exit-clear one adds its change to the stay and its change back to the clear', () => {
  const plain = givenLoop(8, [[0, 5]], 2, 1)
  const spec: LineSpec = {
    ...plain,
    zones: plain.zones.map((one, index) =>
      index === 3 ? { ...one, transfer: { liftSeconds: 4, lowerSeconds: 1, enterOnlyIfExitClear: false } } : one,
    ),
    paths: plain.paths.map((path, index) => (index === 3 ? { ...path, fromPosition: 'high' } : path)),
  }
  const { exchanges, ...made } = law(spec)
  expect(exchanges[3]).toMatchObject({ changeSeconds: 4, changeBackSeconds: 1, seconds: 2 + 4 + 1 + 1 })
  expect(made.lapSeconds).toBe(8 * 2 + 5 + 4)
  expect(made.holeLapSeconds).toBe(8 + 1)
  expect(made.storageZones).toBe(8)
  expect(made.exact).toBe(true)
})

test('a carrier with nothing to do keeps its speed; a stop costs two half ramps', () => {
  const loop = baseLine('single')
  const bare: LineSpec = {
    ...loop,
    zones: loop.zones.map((one) => ({ ...one, transfer: null })),
    paths: loop.paths.map((path) => ({ ...path, fromPosition: 'low' })),
    stations: [],
  }
  expect(law(bare).lapSeconds).toBe(22 * 6)
  const stopping = { ...bare, stations: [station(4, { unload: [], load: [] })] }
  expect(law(stopping).lapSeconds).toBe(22 * 6 + 0.625)
})

test('paths that are no single loop are refused', () => {
  const spec = givenLoop(4, [], 1, 1)
  const open: LineSpec = { ...spec, paths: spec.paths.slice(1) }
  expect(() => law(open)).toThrow(/one closed loop/)
  expect(lawOrNull(open)).toBeNull()
  expect(lawOrNull(spec)).toEqual(law(spec))
})

test('a count that is no whole number is refused', () => {
  expect(() => lawTerms(law(givenLoop(4, [], 1, 1)), 1.5)).toThrow(/whole number/)
})

test('of 5,000 zones each term is what it is of one, as often', () => {
  const one = { zoneLength: 1, drive: { speed: 0.25, reaction: 0 }, carriers: { count: 2, length: 0.75 }, end: 3600 }
  const { spec } = loopLine({ ...one, zones: 5000, stations: { A: { zone: 0, load: 8 }, B: { zone: 2500, unload: 8 } } })
  // a move of 1 m at 0.25 m/s takes 4 s, a clear of 0.75 m 3 s: constant times without ramps
  expect(law(spec)).toMatchObject({ lapSeconds: 5000 * 4 + 16, holeLapSeconds: 5000 * 3, storageZones: 5000, unitsPerLap: 1 })
  expect(
    law(spec)
      .exchanges.filter(({ workSeconds }) => workSeconds > 0)
      .map(({ seconds }) => seconds),
  ).toEqual([15, 15])
})
