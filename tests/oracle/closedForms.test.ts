/**
 * General lines against formulas of queueing theory, which know nothing of this program.
 * Each check takes means over independent runs; the alarm is |t| > 4, which a right program sets off in fewer than 1 of 1,000 seeds; seeds are fixed.
 * The second line of each check says how small an error would be seen: four standard errors are less than 4.5 % of the value.
 */
import { type LineSpec, type RunResult, type SupplySpec, simulate } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { chain, smallGraph } from '../helpers/smallGraph.ts'
import { type StationWish, smallLoop } from '../helpers/smallLoop.ts'

const exponential = (mean: number) => ({ kind: 'exponential', mean }) as const
const RUNS = 20

type Measure = (run: RunResult) => number

/** @param more  other measures of the same runs, with their values */
function agrees(spec: LineSpec, measure: Measure, value: number, ...more: readonly (readonly [Measure, number])[]): void {
  const runs = Array.from({ length: RUNS }, (_, replication) => simulate(spec, { seed: 'closed forms', replication }))
  for (const [one, known] of [[measure, value] as const, ...more]) near(runs.map(one), known)
}

function near(values: readonly number[], value: number): void {
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

// Source: Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, 4th ed. (2008), section 2.5, M/M/1/K (from memory)
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
  // Wq = rho s / (2 (1 − rho))
  // Source: Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, 4th ed. (2008), section 5.1 (from memory)
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

/**
 * So many loops of two zones: a carrier is away for an exponential time and then needs somebody's work; the operators cover all stations and walk 0 s. The
 * carriers away are the machines that run, those at a station the machines that stand.
 */
function interference(machines: number, operators: number, away: number, service: number, until: number): LineSpec {
  const zones = Array.from({ length: machines }, (_, k) => 2 * k)
  const line = smallGraph({
    zones: 2 * machines,
    start: zones,
    paths: zones.flatMap((zone) => [
      { from: zone, to: zone + 1, move: exponential(away) },
      { from: zone + 1, to: zone, move: 0 },
    ]),
    stations: zones.map((at) => ({ at, unload: true, load: exponential(service) })),
    clear: 0,
    warmup: until / 12,
    until,
  })
  return {
    ...line,
    operators: Array.from({ length: operators }, (_, o) => ({ name: `operator ${o}`, stations: zones.map((_, s) => s), start: o })),
  }
}

/**
 * Mean number of machines that stand, M/M/r//N: P_n = N!/(N − n)! (service/away)^n P_0 / (n! for n ≤ r, else r! r^(n − r)).
 * Source: C. Palm (1947); Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, 4th ed. (2008), section 2.7 (both from memory).
 */
function standing(machines: number, operators: number, ratio: number): { readonly none: number; readonly mean: number } {
  const weights = [1]
  for (let n = 1; n <= machines; n++) weights.push((weights[n - 1]! * (machines - n + 1) * ratio) / Math.min(n, operators))
  const all = weights.reduce((a, b) => a + b)
  return { none: weights[0]! / all, mean: weights.reduce((sum, weight, n) => sum + n * weight, 0) / all }
}

test('five machines and two repairers in the textbook: nothing stands 0.619 of the time, 0.465 machines stand', () => {
  // time to failure 30 h, repair 3 h
  // Source: Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, 4th ed. (2008), section 2.7, worked example (from memory)
  expect(standing(5, 2, 3 / 30).none).toBeCloseTo(0.619, 3)
  expect(standing(5, 2, 3 / 30).mean).toBeCloseTo(0.465, 3)
})

describe.each([
  [5, 1, 60, 15],
  [5, 2, 30, 3],
  [6, 2, 40, 25],
  [8, 3, 30, 20],
] as const)('machine interference: %i stations, %i operators who walk 0 s, away %i s, work %i s', (machines, operators, away, service) => {
  const until = 24_000
  const spec = interference(machines, operators, away, service, until)
  const { mean } = standing(machines, operators, service / away)

  test('work done a second, and stations where somebody works or is waited for', () => {
    const standing = ({ stations }: RunResult) =>
      stations.reduce((sum, { seconds }) => sum + seconds.working + seconds['waiting for operator'], 0) / (until - until / 12)
    agrees(spec, (run) => run.loads / (until - until / 12), (machines - mean) / away, [standing, mean])
  })
})

/** Store → stations with so many plain zones between them → store, and no time on the way; carriers are always there. */
function openLine(means: readonly number[], between: number): LineSpec {
  const zones = means.length + (means.length - 1) * between
  const last = means.length - 1
  return smallGraph({
    zones,
    start: { count: zones + 2, rule: 'store' },
    paths: chain('store', ...Array.from({ length: zones }, (_, z) => z), 'store'),
    stations: means.map((mean, k) => ({
      at: k * (between + 1),
      ...(k === 0 ? { load: exponential(mean) } : k === last ? { unload: exponential(mean) } : { work: exponential(mean) }),
    })),
    move: 0,
    clear: 0,
    warmup: 300,
    until: 5_300,
  })
}

test.each([
  [1, 1, 0],
  [1, 1, 2],
  [1, 0.8, 1],
  [0.7, 1, 3],
] as const)('two stations of an open line, work %d and %d s, %i plain zones between them', (first, second, between) => {
  // rate 1/first (1 − r^(b + 2))/(1 − r^(b + 3)), r = second/first; for r = 1 (b + 2)/(b + 3)
  // Source: G. C. Hunt, Operations Research 4 (1956) 674–683 (from memory)
  const r = second / first
  const share = r === 1 ? (between + 2) / (between + 3) : (1 - r ** (between + 2)) / (1 - r ** (between + 3))
  agrees(openLine([first, second], between), (run) => run.output / 5_000, share / first)
})

test('three stations of an open line, no room between them: 22/39', () => {
  // Source: G. C. Hunt, Operations Research 4 (1956) 674–683, three equal exponential stations without places between them: 0.5641 (from memory)
  agrees(openLine([1, 1, 1], 0), (run) => run.output / 5_000, 22 / 39)
})

test('three stations of an open line, a plain zone between each two: 0.67047', () => {
  // Hunt (1956), in tests/proof/exact/open-line-equal-stations.json
  agrees(openLine([1, 1, 1], 1), (run) => run.output / 5_000, 0.6704661583209)
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
