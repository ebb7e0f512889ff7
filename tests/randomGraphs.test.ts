/** Random lines of any graph: every invariant holds after every instant, carriers are conserved, and neither a trace nor the order of timers shows. */
import { type LineSpec, type PathSpec, PLAIN_PATH, type Position, simulate, STORE, type TakesSpec, Trace } from '@loopwright/line'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { smallLoop, type StationWish, type StopWish } from './helpers/smallLoop.ts'
import { total } from './helpers/spent.ts'

const SEED = 11
const RUNS = 150

interface Shape {
  readonly zones: number
  readonly paths: readonly {
    from: number
    to: number
    takes: Partial<TakesSpec>
    out: Position
    in: Position
    given: boolean
    move: number
    clear: number
  }[]
}

const position = fc.constantFrom<Position>('low', 'low', 'high')
const takes: fc.Arbitrary<Partial<TakesSpec>> = fc.oneof(
  { weight: 5, arbitrary: fc.constant({}) },
  fc.record({ load: fc.constantFrom('empty' as const, 'loaded' as const) }),
  fc.record({ variants: fc.constantFrom([0], [1]) }),
  fc.record({ forStation: fc.constantFrom(0, 1) }),
)

const shape: fc.Arbitrary<Shape> = fc.integer({ min: 3, max: 8 }).chain((zones) => {
  const details = {
    takes,
    out: position,
    in: position,
    given: fc.boolean(),
    move: fc.integer({ min: 0, max: 6 }),
    clear: fc.integer({ min: 0, max: 8 }),
  }
  const path = fc
    .record({ from: fc.integer({ min: STORE, max: zones - 1 }), to: fc.integer({ min: STORE, max: zones - 1 }), ...details })
    .filter(({ from, to }) => from !== to)
  const around = fc.tuple(
    ...Array.from({ length: zones }, (_, from) => fc.record({ from: fc.constant(from), to: fc.constant((from + 1) % zones), ...details })),
  )
  return fc.record({
    zones: fc.constant(zones),
    paths: fc
      .tuple(around, fc.array(path, { maxLength: zones }))
      .map(([loop, more]) => [...loop.map((one) => ({ ...one, takes: {} })), ...more]),
  })
})

const stations = (zones: number): fc.Arbitrary<readonly StationWish[]> =>
  fc
    .record({ load: fc.integer({ min: 0, max: 9 }), work: fc.integer({ min: 1, max: 9 }), unload: fc.integer({ min: 0, max: 3 }) })
    .map((times) => [
      { at: 0, load: times.load, unload: times.unload },
      { at: zones - 1, work: { weld: [times.work, null] } },
    ])

const stops = (zones: number): fc.Arbitrary<readonly StopWish[]> =>
  fc
    .array(
      fc.record({
        on: fc.oneof(
          fc.record({ kind: fc.constant('zone' as const), index: fc.integer({ min: 0, max: zones - 1 }) }),
          fc.record({ kind: fc.constant('section' as const), index: fc.constant(0) }),
          fc.record({ kind: fc.constant('station' as const), index: fc.constant(0) }),
        ),
        clock: fc.constantFrom('operating' as const, 'calendar' as const),
        after: fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 2, maxLength: 4 }),
        repair: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 3 }),
      }),
      { maxLength: 3 },
    )
    .map((all) => all.map((one, k) => ({ ...one, name: `stop ${k}` })))

const anyGraph: fc.Arbitrary<LineSpec> = shape.chain(({ zones, paths }) =>
  fc
    .record({
      transfers: fc.array(
        fc.option(fc.record({ lift: fc.integer({ min: 0, max: 3 }), lower: fc.integer({ min: 0, max: 3 }), exitClear: fc.boolean() })),
        { minLength: zones, maxLength: zones },
      ),
      diverts: fc.array(fc.constantFrom('first' as const, 'alternate' as const, 'free' as const), { minLength: zones, maxLength: zones }),
      merges: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: zones, maxLength: zones }),
      stations: stations(zones),
      stops: stops(zones),
      count: fc.integer({ min: 1, max: zones + 2 }),
      breaks: fc.boolean(),
      conveyorStops: fc.boolean(),
    })
    .map((drawn): LineSpec => {
      const transfers = Object.fromEntries(drawn.transfers.flatMap((one, z) => (one === null ? [] : [[z, one]])))
      const { stations: wanted, stops: stopped, conveyorStops } = drawn
      const loop = smallLoop({
        zones,
        start: [0],
        transfers,
        stations: wanted,
        stops: stopped,
        conveyorStops,
        breaks: drawn.breaks ? [[40, 7]] : [],
        variants: 2,
        mix: { kind: 'pattern', sequence: [0, 1] },
        until: 200,
        warmup: 20,
        odd: true,
      })
      const constant = (value: number) => ({ kind: 'constant' as const, value })
      const all = paths.map(
        (path): PathSpec => ({
          ...loop.paths[0]!,
          from: path.from,
          to: path.to,
          fromPosition: path.from !== STORE && drawn.transfers[path.from] !== null ? path.out : 'low',
          toPosition: path.to !== STORE && drawn.transfers[path.to] !== null ? path.in : 'low',
          takes: { ...PLAIN_PATH.takes, ...path.takes },
          moveSeconds: path.given ? constant(path.move) : null,
          clearSeconds: path.given ? constant(path.clear) : null,
        }),
      )
      const isOpen = all.some((path) => path.from === STORE)
      const places = drawn.transfers.flatMap((one, z) => (one?.exitClear === true ? [] : [z]))
      const standing = places.slice(0, Math.max(1, Math.min(drawn.count, places.length - 1)))
      const start = [...standing, ...(isOpen ? new Array<number>(Math.max(0, drawn.count - standing.length)).fill(STORE) : [])]
      return {
        ...loop,
        zones: loop.zones.map((zone, z) => {
          const kind = drawn.merges[z]!
          return {
            ...zone,
            divert: drawn.diverts[z]!,
            merge:
              kind === 0 ? { kind: 'alternate' } : kind === 1 ? { kind: 'priority', from: [(z + 2) % zones, STORE] } : { kind: 'waiting' },
          }
        }),
        paths: all,
        carriers: { ...loop.carriers, count: start.length, start },
      }
    }),
)

test(`${RUNS} random graphs`, () => {
  const seen = { gridlock: 0, store: 0, moves: 0 }
  fc.assert(
    fc.property(anyGraph, (spec) => {
      fc.pre(spec.carriers.count > 0)
      const trace = new Trace()
      const result = simulate(spec, { seed: 'a', replication: 0, trace, verify: true })
      const again = new Trace()
      expect(simulate(spec, { seed: 'a', replication: 0, trace: again, verify: true, backwards: true })).toEqual(result)
      expect(again.hash.digest()).toBe(trace.hash.digest())
      expect(simulate(spec, { seed: 'a', replication: 0 })).toEqual(result)
      const seconds = 180
      const held = result.zones.reduce((sum, zone) => sum + zone.occupancyMean, result.storeMean)
      expect(held).toBeCloseTo(spec.carriers.count, 9)
      for (const one of [...result.zones, ...result.stations, ...result.carriers]) expect(total(one.seconds)).toBeCloseTo(seconds, 6)
      expect(result.output).toBeLessThanOrEqual(result.loads + spec.carriers.count)
      if (result.end.reason === 'gridlock') seen.gridlock++
      if (result.storeMean > 0) seen.store++
      if (result.zones.some((zone) => zone.movesOut > 5)) seen.moves++
    }),
    { seed: SEED, numRuns: RUNS },
  )
  // each kind of line is met often enough
  expect(Math.min(seen.gridlock, seen.store, seen.moves)).toBeGreaterThan(RUNS / 20)
})
