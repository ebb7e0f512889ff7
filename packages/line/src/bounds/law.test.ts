import type { Distribution } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import type { LineSpec, PathSpec, StationSpec, ZoneSpec } from '../spec.ts'
import { dutyLaps } from './dutyLaps.ts'
import { law } from './law.ts'
import { lawTerms } from './lawTerms.ts'

const constant = (value: number): Distribution => ({ kind: 'constant', value })
const zone = (name: string): ZoneSpec => ({ name, lengthMetres: 1.5, sensorBeforeStopMetres: 0, release: 'single', transfer: null })

const station = (at: number, duties: Partial<StationSpec>): StationSpec => ({
  name: `S${at}`,
  title: `S${at}`,
  zone: at,
  unload: null,
  load: null,
  work: null,
  releaseSeconds: constant(0),
  automatic: false,
  worksInBreaks: false,
  ...duties,
})

/** A loop with given times: station in zone 0 unloads and loads, tasks work on the product. */
function givenLoop(
  zones: number,
  tasks: readonly (readonly [zone: number, seconds: number])[],
  moves: number | readonly number[],
  clears: number | readonly number[],
): LineSpec {
  const at = (of: number | readonly number[], index: number): number => (typeof of === 'number' ? of : of[index]!)
  const path = (from: number): PathSpec => ({
    from,
    to: (from + 1) % zones,
    distanceMetres: null,
    speedMetresPerSecond: null,
    accelerationMetresPerSecondSquared: null,
    across: false,
    fromPosition: 'low',
    toPosition: 'low',
    moveSeconds: constant(at(moves, from)),
    clearSeconds: constant(at(clears, from)),
  })
  const work = (task: number, seconds: number) => [{ task, seconds: [constant(seconds)] }]
  const first = tasks.findIndex(([where]) => where === 0)
  return {
    zones: Array.from({ length: zones }, (_, index) => zone(`Z${index}`)),
    paths: Array.from({ length: zones }, (_, index) => path(index)),
    carriers: { count: 1, lengthMetres: null, widthMetres: null, start: 'spread' },
    reactionSeconds: 0,
    staggerSeconds: 0,
    stations: [
      station(0, { unload: [], load: [], work: first < 0 ? null : work(first, tasks[first]![1]) }),
      ...tasks.flatMap(([where, seconds], task) => (where === 0 ? [] : [station(where, { work: work(task, seconds) })])),
    ],
    tasks: tasks.map(([where]) => `task ${where}`),
    variants: ['one'],
    mix: { kind: 'random', shares: [1] },
    breakdowns: [],
    breaks: [],
    conveyorDuringBreaks: true,
    window: { warmupSeconds: 0, endSeconds: 3600 },
  }
}

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
    expect(() => law(givenLoop(6, [], 0, 0))).toThrow(/a lap takes no time/)
  })
})

const TIMES: readonly (readonly [zone: number, cv: number, seconds: readonly number[]])[] = [
  [1, 0.1, [38, 38, 44, 48]],
  [3, 0.12, [56, 58, 66, 72]],
  [6, 0.12, [54, 58, 64, 70]],
  [12, 0.15, [50, 52, 58, 64]],
  [14, 0.12, [46, 50, 56, 62]],
  [16, 0.02, [60, 60, 66, 66]],
  [18, 0.1, [36, 36, 42, 46]],
]
const SHARES = [0.4, 0.3, 0.2, 0.1]
const COLD = [0.2, 0.4, 0.5, 0.6]
const QUIET = 0.3

/** A base line of 22 zones of 1.5 m with four corners, seven stations, four variants and two options. Invented. */
function baseLine(release: 'single' | 'train'): LineSpec {
  const corners = [8, 10, 19, 21]
  const variants = SHARES.flatMap((share, base) =>
    [false, true].flatMap((cold) =>
      [false, true].map((quiet) => ({
        share: share * (cold ? COLD[base]! : 1 - COLD[base]!) * (quiet ? QUIET : 1 - QUIET),
        base,
        adds: { 12: cold ? 16 : 0, 14: quiet ? 18 : 0 } as Record<number, number>,
      })),
    ),
  )
  const zones = Array.from({ length: 22 }, (_, index): ZoneSpec => {
    const transfer = corners.includes(index) ? { liftSeconds: 2, lowerSeconds: 1.6, enterOnlyIfExitClear: true } : null
    const feedsCorner = corners.includes((index + 1) % 22)
    return {
      name: `Z${String(index + 1).padStart(2, '0')}`,
      lengthMetres: 1.5,
      sensorBeforeStopMetres: transfer === null ? 0.078125 : 0,
      release: feedsCorner ? 'single' : release,
      transfer,
    }
  })
  return {
    zones,
    paths: zones.map((_, from) => ({
      from,
      to: (from + 1) % 22,
      distanceMetres: 1.5,
      speedMetresPerSecond: 0.25,
      accelerationMetresPerSecondSquared: 0.4,
      across: false,
      fromPosition: corners.includes(from) ? 'high' : 'low',
      toPosition: 'low',
      moveSeconds: null,
      clearSeconds: null,
    })),
    carriers: { count: 12, lengthMetres: 1.2, widthMetres: 1.2, start: 'spread' },
    reactionSeconds: 0.15,
    staggerSeconds: 0.3,
    stations: TIMES.map(([at, cv, means], index) => {
      const tasks = [
        {
          task: index,
          seconds: variants.map(({ base, adds }) => ({ kind: 'lognormal', mean: means[base]! + (adds[at] ?? 0), cv }) as const),
        },
      ]
      const duty = at === 1 ? { load: tasks } : at === 18 ? { unload: tasks } : { work: tasks }
      return station(at, { ...duty, name: `S${index + 1}`, releaseSeconds: constant(2) })
    }),
    tasks: TIMES.map(([at]) => `task ${at}`),
    variants: variants.map((_, index) => `variant ${index}`),
    mix: { kind: 'random', shares: variants.map((variant) => variant.share) },
    breakdowns: [],
    breaks: [],
    conveyorDuringBreaks: true,
    window: { warmupSeconds: 30_000, endSeconds: 60_000 },
  }
}

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

describe('duties of a lone carrier', () => {
  const task = (index: number, ...seconds: (number | null)[]) => ({
    task: index,
    seconds: seconds.map((one) => (one === null ? null : constant(one))),
  })
  const loop = (stations: StationSpec[]): LineSpec => ({ ...givenLoop(6, [], 1, 1), stations, variants: ['a', 'b'], tasks: ['x', 'y'] })
  const seconds = (spec: LineSpec, variant: number): number[] => dutyLaps(spec, variant).visits.map((visit) => visit.workSeconds)

  test('empty carriers pass stations between unload and load', () => {
    const spec = loop([
      station(1, { load: [] }),
      station(2, { work: [task(0, 10, 10)] }),
      station(3, { unload: [] }),
      station(4, { work: [task(1, 7, 7)] }),
    ])
    expect(seconds(spec, 0)).toEqual([0, 0, 10, 0, 0, 0])
    expect(dutyLaps(spec, 0).units).toBe(1)
  })

  test('a task is done once, at the first station that has it', () => {
    const spec = loop([
      station(1, { load: [] }),
      station(2, { work: [task(0, 10, null)] }),
      station(4, { work: [task(0, 12, 12)] }),
      station(5, { unload: [] }),
    ])
    expect(seconds(spec, 0)).toEqual([0, 0, 10, 0, 0, 0])
    expect(seconds(spec, 1)).toEqual([0, 0, 0, 0, 12, 0])
  })

  test('a product that nobody takes off goes round without work', () => {
    const spec = loop([station(1, { load: [] }), station(2, { work: [task(0, 10, 10)] })])
    const laps = dutyLaps(spec, 0)
    expect(laps).toMatchObject({ laps: 1, units: 0 })
    expect(laps.visits.some((visit) => visit.duty)).toBe(false)
  })

  test('two loads and two unloads make two products a lap', () => {
    const spec = loop([station(0, { load: [] }), station(1, { unload: [] }), station(3, { load: [] }), station(5, { unload: [] })])
    expect(dutyLaps(spec, 0)).toMatchObject({ laps: 1, units: 2 })
  })

  test('an unload task that the variant does not have leaves the product on the carrier', () => {
    const spec = loop([station(1, { load: [] }), station(3, { unload: [task(0, 5, null)] })])
    expect(dutyLaps(spec, 0).units).toBe(1)
    expect(dutyLaps(spec, 1).units).toBe(0)
  })
})

test('paths that are no single loop are refused', () => {
  const spec = givenLoop(4, [], 1, 1)
  expect(() => law({ ...spec, paths: spec.paths.slice(1) })).toThrow(/one closed loop/)
})

test('a count that is no whole number is refused', () => {
  expect(() => lawTerms(law(givenLoop(4, [], 1, 1)), 1.5)).toThrow(/whole number/)
})
