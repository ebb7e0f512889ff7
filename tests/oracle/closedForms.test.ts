/**
 * General lines against formulas of queueing theory, which know nothing of this program.
 * Each check takes means over independent runs; the alarm is |t| > 4, which a right program sets off in fewer than 1 of 1,000 seeds; seeds are fixed.
 * The second line of each check says how small an error would be seen: four standard errors are less than 4.5 % of the value.
 */
import { type LineSpec, type RunResult, type SupplySpec, simulate } from '@loopwright/line'
import { expect, test } from 'vitest'
import { chain, smallGraph } from '../helpers/smallGraph.ts'
import { type StationWish, smallLoop } from '../helpers/smallLoop.ts'

const exponential = (mean: number) => ({ kind: 'exponential', mean }) as const
const RUNS = 20

function agrees(spec: LineSpec, measure: (run: RunResult) => number, value: number): void {
  const values = Array.from({ length: RUNS }, (_, replication) => measure(simulate(spec, { seed: 'closed forms', replication })))
  const mean = values.reduce((a, b) => a + b) / RUNS
  const error = Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (RUNS - 1) / RUNS)
  expect(Math.abs(mean - value) / error).toBeLessThan(4)
  expect((4 * error) / value).toBeLessThan(0.045)
}

/** Store → load → unload → store, and no time on the way: what takes time is the load and the unload alone. */
const open = (stations: readonly StationWish[], until: number): LineSpec =>
  smallGraph({
    zones: 2,
    start: { count: 6, rule: 'store' },
    paths: chain('store', 0, 1, 'store'),
    stations,
    move: 0,
    clear: 0,
    warmup: until / 20,
    until,
  })
const arriving = (mean: number, queueLimit: number | null): SupplySpec => ({
  name: 'supply',
  arrivals: { kind: 'every', seconds: exponential(mean) },
  queueLimit,
})

// Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, 4th ed. (2008), section 2.5: M/M/1/K
const fullShare = (rho: number, k: number): number => ((1 - rho) * rho ** k) / (1 - rho ** (k + 1))

test('M/M/1/K: the share of products that find the queue full', () => {
  // three places in the queue and one at work: K = 4
  const spec = {
    ...open(
      [
        { at: 0, load: exponential(8) },
        { at: 1, unload: true },
      ],
      150_000,
    ),
    supply: arriving(10, 3),
  }
  agrees(spec, ({ supplies: [supply] }) => supply!.turnedAway / supply!.arrivals, fullShare(0.8, 4))
})

test('M/D/1: the mean wait in the queue (Pollaczek and Khinchine)', () => {
  // Wq = rho s / (2 (1 − rho)); Gross et al., section 5.1
  const spec = {
    ...open(
      [
        { at: 0, load: 6 },
        { at: 1, unload: true },
      ],
      150_000,
    ),
    supply: arriving(10, null),
  }
  agrees(spec, ({ supplies: [supply] }) => supply!.waiting.mean!, (0.6 * 6) / (2 * 0.4))
})

test('a saturated unload before a receiver with two places: the receiver is an M/M/1/K, K = 3', () => {
  // products go to the receiver at rate 1/9 while it has a place, and leave at rate 1/10: output = (1/9)(1 − P_K)
  const line = open(
    [
      { at: 0, load: true },
      { at: 1, unload: exponential(9) },
    ],
    300_000,
  )
  const receiver = { cycleSeconds: exponential(10), queue: 2 }
  const spec = { ...line, stations: line.stations.map((station, s) => (s === 1 ? { ...station, receiver } : station)) }
  agrees(spec, (run) => run.outputPerHour / 3600, (1 - fullShare(10 / 9, 3)) / 9)
})

test('machine interference: one operator for five stations, walking 0 s', () => {
  // Five loops of two zones: a carrier is away for an exponential time of 60 s and then needs the operator for 15 s. Finite source M/M/1//5 (Palm 1947; Gross et
  // al., section 2.7): P_n = N!/(N − n)! r^n P_0, r = 15/60; served per second = (1 − P_0)/15.
  const [n, away, service] = [5, 60, 15]
  const zones = Array.from({ length: n }, (_, k) => 2 * k)
  const line = smallGraph({
    zones: 2 * n,
    start: zones,
    paths: zones.flatMap((zone) => [
      { from: zone, to: zone + 1, move: exponential(away) },
      { from: zone + 1, to: zone, move: 0 },
    ]),
    stations: zones.map((at) => ({ at, unload: true, load: exponential(service) })),
    clear: 0,
    warmup: 5_000,
    until: 60_000,
  })
  const spec = { ...line, operators: [{ name: 'anna', stations: zones.map((_, s) => s), start: 0 }] }
  const weights = Array.from(
    { length: n + 1 },
    (_, k) => Array.from({ length: k }, (_, j) => n - j).reduce((a, b) => a * b, 1) * (service / away) ** k,
  )
  const idle = 1 / weights.reduce((a, b) => a + b)
  agrees(spec, (run) => run.loads / (60_000 - 5_000), (1 - idle) / service)
})

test('a merge and a divert lose nothing: what comes in by two ways goes out by two, in the shares that the divert says', () => {
  const spec = smallGraph({
    zones: 6,
    start: [0, 3],
    paths: [...chain(0, 1, 2, 0), ...chain(3, 4, 2, 3)],
    diverts: { 2: 'alternate' },
    move: 3,
    clear: 2,
    until: 10_000,
  })
  const { zones } = simulate(spec, { seed: 'closed forms', replication: 0 })
  expect(Math.abs(zones[1]!.movesOut + zones[4]!.movesOut - zones[2]!.movesOut)).toBeLessThanOrEqual(2)
  expect(Math.abs(zones[0]!.movesOut - zones[3]!.movesOut)).toBeLessThanOrEqual(2)
})

test('an open line written for a loop: named operators, one each, change nothing', () => {
  const loop = smallLoop({
    zones: 6,
    start: 3,
    move: 4,
    clear: 3,
    stations: [
      { at: 0, load: exponential(9), unload: 2 },
      { at: 3, work: exponential(11), release: 1 },
    ],
    until: 20_000,
  })
  const own = simulate(loop, { seed: 'a', replication: 0 })
  const named = simulate(
    {
      ...loop,
      operators: [
        { name: 'a', stations: [0], start: 0 },
        { name: 'b', stations: [1], start: 1 },
      ],
    },
    { seed: 'a', replication: 0 },
  )
  expect(named.outputSeconds).toEqual(own.outputSeconds)
  expect(named.stations).toEqual(own.stations)
})
