/** Quick instants are told as handleInstant tells them: a run with checks has none of them, so that it must give the same. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { blockLoop } from '../../../../tests/bench/lines.ts'
import { randomLanes } from '../../../../tests/helpers/randomLanes.ts'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { randomLine } from '../../../../tests/oracle/readAloud/randomLine.ts'
import { buildLine } from '../build/build.ts'
import { handleInstant } from '../instant/instant.ts'
import { runQuick } from './quick.ts'
import { AFTER_EXIT_CLEAR, DIVERTS, EXIT_CLEAR, makeQuick, MEETS, MERGES, QUICK, quickZones, TURNS } from './quickZones.ts'
import { simulate } from '../simulate.ts'
import type { LineSpec } from '../spec.ts'
import { resetLine } from '../build/start.ts'

function expectSame(line: LineSpec, seed: string): void {
  const run = { seed, replication: 0, engine: 'events' } as const
  expect(simulate(line, run)).toEqual(simulate(line, { ...run, verify: true }))
}

/** All times from the drives, so that moves may be quick. */
const driven = (line: LineSpec): LineSpec => ({
  ...line,
  paths: line.paths.map((path) => ({
    ...path,
    distanceMetres: path.distanceMetres ?? 1.5,
    speedMetresPerSecond: path.speedMetresPerSecond ?? 0.3,
    accelerationMetresPerSecondSquared: path.accelerationMetresPerSecondSquared ?? 0.5,
    moveSeconds: null,
    clearSeconds: null,
  })),
})

/** Counts for each flag the lines that have a quick zone with it. */
function countFlags(seen: Map<number, number>, line: LineSpec, wanted: readonly number[]): void {
  const flags = quickZones(buildLine(line))
  for (const flag of wanted) {
    if (flags.some((zone) => (zone & QUICK) > 0 && (zone & flag) > 0)) seen.set(flag, (seen.get(flag) ?? 0) + 1)
  }
}

test('300 random lines, as they are and all driven: no number differs, and every kind of zone occurs often', { tags: 'long' }, () => {
  const seen = new Map<number, number>()
  const wanted = [QUICK, TURNS, EXIT_CLEAR, AFTER_EXIT_CLEAR]
  fc.assert(
    fc.property(randomLine(), (given) => {
      for (const line of [given, driven(given)]) {
        expectSame(line, '7')
        countFlags(seen, line, wanted)
      }
    }),
    { seed: 31, numRuns: 300 },
  )
  for (const flag of wanted) expect(seen.get(flag)).toBeGreaterThan(60)
})

test('60 random lines of lanes: no number differs, and every kind of zone occurs often', { tags: 'long' }, () => {
  const seen = new Map<number, number>()
  const wanted = [QUICK, TURNS, DIVERTS, MERGES, MEETS]
  let stores = 0
  for (let k = 0; k < 60; k++) {
    const line = randomLanes(`lanes ${k}`)
    expectSame(line, '7')
    countFlags(seen, line, wanted)
    if ((quickZones(buildLine(line)).at(-1)! & QUICK) > 0) stores++
  }
  for (const flag of wanted) expect(seen.get(flag)).toBeGreaterThan(3)
  expect(stores).toBeGreaterThan(10)
})

describe('lines that give rise to each kind of instant', () => {
  const stations = [
    { at: 0, unload: true, load: { kind: 'lognormal', mean: 9, cv: 0.3 } },
    { at: 3, work: { kind: 'gamma', mean: 12, cv: 0.5 }, release: 1 },
    { at: 5, work: 0 },
  ] as const
  const wish = { zones: 9, start: 5, packed: true, stations, until: 2_000, warmup: 100 } as const
  const exit = { lift: 1.5, lower: 1, out: 'high' } as const
  const stop = { after: { kind: 'exponential', mean: 120 }, repair: { kind: 'exponential', mean: 15 } } as const

  test.each<[string, LineSpec]>([
    ['many carriers at one instant', blockLoop(2, 0.3, { each: true })],
    ['more timers than stand in order', blockLoop(6, 0.15, { carriers: 100, each: true })],
    ['transfers', smallLoop({ ...wish, transfers: { 2: exit, 7: exit } })],
    [
      'transfers entered only if their exit is clear',
      smallLoop({ ...wish, transfers: { 2: { ...exit, exitClear: true }, 7: { ...exit, exitClear: true } } }),
    ],
    [
      'two such transfers one behind the other',
      smallLoop({ ...wish, start: 4, transfers: { 6: { ...exit, exitClear: true }, 7: { ...exit, exitClear: true } } }),
    ],
    ['products that come to an end', smallLoop({ ...wish, mix: { kind: 'list', sequence: [0, 0, 0, 0, 0, 0, 0] } })],
    ['zone stops', smallLoop({ ...wish, stops: [{ ...stop, name: 'jam', on: { kind: 'zone', index: 4 }, clock: 'calendar' }] })],
    [
      'station and transfer stops',
      smallLoop({
        ...wish,
        transfers: { 7: exit },
        stops: [
          { ...stop, name: 'tool', on: { kind: 'station', index: 1 }, clock: 'operating' },
          { ...stop, name: 'lift', on: { kind: 'transfer', index: 7 }, clock: 'operating' },
          { ...stop, name: 'shift', on: { kind: 'station', index: 0 }, clock: 'calendar' },
        ],
      }),
    ],
    [
      'breaks with the conveyor running',
      smallLoop({
        ...wish,
        breaks: [
          [200, 60],
          [900, 300],
        ],
      }),
    ],
    [
      'breaks with the conveyor stopped',
      smallLoop({
        ...wish,
        breaks: [
          [200, 60],
          [900, 300],
        ],
        conveyorStops: true,
      }),
    ],
  ])('%s', (_, line) => {
    for (const seed of ['1', '2', '3', '4', '5', '6', '7', '8']) expectSame(line, seed)
  })
})

test('an end in the middle of a move leaves the line where handling instant by instant leaves it', () => {
  const [one, other] = [1, 2].map(() => {
    const line = buildLine(blockLoop(1, 8))
    resetLine(line, 'a', 3)
    handleInstant(line)
    return line
  }) as [ReturnType<typeof buildLine>, ReturnType<typeof buildLine>]
  expect(runQuick(one, makeQuick(one)!, 5_000)).toBe(true)
  for (let next = 0; next <= 5_000; next = other.queue.times[other.queue.first()]!) {
    if (next > 0) {
      other.now = next
      handleInstant(other)
    }
  }
  expect(one.now).toBe(other.now)
  for (const column of ['zoneCarrier', 'carrierZone', 'carrierPhase', 'pathCarrier'] as const) {
    expect([column, ...one.moves[column]]).toEqual([column, ...other.moves[column]])
  }
  expect(one.goods.carrierSerial).toEqual(other.goods.carrierSerial)
  expect(one.transfers.zonePosition).toEqual(other.transfers.zonePosition)
})
