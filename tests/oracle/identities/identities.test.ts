/** What holds exactly in every run (MODEL.md §11), and every number of a result, counted again from the trace. */
import { readFileSync } from 'node:fs'
import { type LineSpec, simulate, Trace } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'
import { describe, expect, test } from 'vitest'
import { smallLoop, type StopWish, type Wish } from '../../helpers/smallLoop.ts'
import { compare, differences } from './compare.ts'
import { recount } from './recount.ts'

const exponential = (mean: number) => ({ kind: 'exponential', mean }) as const
const lognormal = (mean: number, cv: number) => ({ kind: 'lognormal', mean, cv }) as const
const failing = (
  name: string,
  on: StopWish['on'],
  up: number,
  repair: number,
  clock: 'operating' | 'calendar' = 'operating',
): StopWish => ({
  name,
  on,
  clock,
  after: exponential(up),
  repair: exponential(repair),
})

const SIX_STATIONS = [0, 3, 7, 10, 13, 17].map((at, k) => ({
  at,
  ...(k === 0
    ? { load: lognormal(38, 0.15) }
    : k === 5
      ? { unload: lognormal(50, 0.15) }
      : { work: lognormal([38, 44, 52, 47, 41][k]!, 0.15) }),
}))
const DRIVE = { v: 0.2, a: 0.5, distance: 1.04, length: 0.75, width: 0.75, sensor: 0, reaction: 0.1 }
const CORNERS = {
  4: { lift: 2, lower: 1.5, exitClear: true },
  5: { lift: 2, lower: 1.5, in: 'high', out: 'low', exitClear: true },
  14: { lift: 1, lower: 1 },
} as const

const LINES: Readonly<Record<string, Wish>> = {
  'one carrier alone': { zones: 5, start: [0], stations: [{ at: 2, unload: true, load: 7 }], until: 500 },
  'twenty zones, six stations': { zones: 20, start: 11, drive: DRIVE, stations: SIX_STATIONS, warmup: 1800, until: 9000 },
  'too many carriers': { zones: 20, start: 19, drive: DRIVE, stations: SIX_STATIONS, warmup: 1000, until: 8000 },
  'train release': { zones: 20, start: 14, drive: DRIVE, train: true, stagger: 0.3, stations: SIX_STATIONS, warmup: 1000, until: 8000 },
  'corners, exit-clear and not': {
    zones: 20,
    start: 12,
    drive: DRIVE,
    transfers: CORNERS,
    stations: SIX_STATIONS.filter(({ at }) => at !== 13),
    warmup: 1000,
    until: 8000,
  },
  'breakdowns of everything, on both clocks': {
    zones: 20,
    start: 12,
    drive: DRIVE,
    transfers: CORNERS,
    stations: SIX_STATIONS,
    stops: [
      failing('wear', { kind: 'station', index: 1 }, 600, 60),
      failing('short stops', { kind: 'station', index: 1 }, 150, 10, 'calendar'),
      failing('roller', { kind: 'zone', index: 8 }, 300, 40),
      failing('sensor', { kind: 'zone', index: 8 }, 500, 30, 'calendar'),
      failing('belt', { kind: 'transfer', index: 4 }, 60, 50),
      failing('chain', { kind: 'transfer', index: 14 }, 700, 90, 'calendar'),
      failing('emergency stop', { kind: 'section', index: 0 }, 900, 45),
      failing('power', { kind: 'section', index: 0 }, 2000, 100, 'calendar'),
    ],
    warmup: 1000,
    until: 9000,
  },
  'breaks, conveyor on': {
    zones: 20,
    start: 12,
    drive: DRIVE,
    stations: SIX_STATIONS.map((station, k) => ({ ...station, ...(k === 2 ? { worksInBreaks: true } : {}) })),
    breaks: [
      [600, 300],
      [3000, 600],
      [3600, 300],
    ],
    until: 5400,
  },
  'breaks, conveyor off, and breakdowns': {
    zones: 20,
    start: 12,
    drive: DRIVE,
    transfers: CORNERS,
    stations: SIX_STATIONS.map((station, k) => ({ ...station, ...(k === 2 ? { worksInBreaks: true } : {}) })),
    stops: [failing('wear', { kind: 'station', index: 3 }, 400, 200), failing('all', { kind: 'section', index: 0 }, 900, 300, 'calendar')],
    breaks: [
      [600, 300],
      [3000, 600],
    ],
    conveyorStops: true,
    warmup: 700,
    until: 5400,
  },
  'given times, moves of 0 s': {
    zones: 8,
    start: 5,
    move: 0,
    clear: 0,
    odd: true,
    stations: [
      { at: 0, unload: true, load: true, work: exponential(1) },
      { at: 3, work: exponential(1.5) },
    ],
    warmup: 50,
    until: 2000,
  },
  'clear longer than the move': {
    zones: 6,
    start: 4,
    move: exponential(2),
    clear: exponential(5),
    stations: [{ at: 2, unload: 1, load: 3, release: 2 }],
    warmup: 40,
    until: 3000,
  },
  'variants, shared tasks, loads of several kinds': {
    zones: 12,
    start: 7,
    variants: 3,
    mix: { kind: 'random', shares: [3, 2, 1] },
    stations: [
      { at: 0, load: { fit: [5, exponential(6), null] } },
      { at: 2, work: { weld: [4, null, lognormal(9, 0.4)], glue: 2 } },
      { at: 5, work: { weld: [8, 3, 3], paint: [null, null, 7] }, release: exponential(2) },
      { at: 9, unload: { strip: [3, 3, null] } },
      { at: 10, unload: true, load: { fit: 4 } },
    ],
    warmup: 300,
    until: 4000,
  },
  'a list that runs out': {
    zones: 9,
    start: 4,
    variants: 2,
    mix: { kind: 'list', sequence: [0, 1, 1, 0, 0, 1, 0] },
    stations: [
      { at: 1, load: { fit: [5, 9] } },
      { at: 6, unload: true },
    ],
    warmup: 20,
    until: 1000,
  },
  gridlock: {
    zones: 6,
    start: [0, 1, 3, 4, 5],
    move: 3,
    clear: 2,
    transfers: { 1: { lift: 1, lower: 1, exitClear: true } },
    warmup: 2,
    until: 50,
  },
}

describe('identities', () => {
  test.each(Object.entries(LINES))('%s', (_, wish) => {
    for (const replication of [0, 1]) expect(differences(smallLoop(wish), 'identities', replication)).toEqual([])
  })

  test('the demo line, two shifts with breaks, breakdowns and short stops', () => {
    const file = new URL('../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url)
    const { scenario, problems } = readScenario(readFileSync(file, 'utf8'))
    expect(scenario, JSON.stringify(problems)).not.toBeNull()
    expect(differences(scenario!.line, 'identities', 0, false)).toEqual([])
  })

  test('products in line = output rate × mean time in line, up to the ends of the window', () => {
    // J. Little, A proof for the queuing formula L = λW, Oper. Res. 9 (1961) 383–387 (from memory).
    // Σ times in line of those taken off in the window differs from ∫ products in line dt by what those in line at its two ends had, or were yet to have: at most N times the longest stay each.
    const wish = LINES['twenty zones, six stations']!
    const result = simulate(smallLoop(wish), { seed: 'identities', replication: 0 })
    const window = result.window.endSeconds - result.window.warmupSeconds
    const difference = result.output * result.timeInLine.mean! - result.productsInLineMean * window
    expect(Math.abs(difference)).toBeLessThanOrEqual(11 * result.timeInLine.max!)
    expect(result.output).toBeGreaterThan(100)
  })
})

describe('the recount finds what is wrong', () => {
  const spec: LineSpec = smallLoop(LINES['breakdowns of everything, on both clocks']!)
  const trace = new Trace()
  const result = simulate(spec, { seed: 'identities', replication: 0, trace })
  const told = recount(spec, trace, result.end)
  const changed = (change: (copy: typeof result) => void): string[] => {
    const copy = JSON.parse(JSON.stringify(result)) as typeof result
    change(copy)
    return compare(spec, copy, told)
  }
  /** the record is read-only to everybody else */
  const set = <S extends string>(seconds: Readonly<Record<S, number>>, state: S, by: number): void => {
    ;(seconds as Record<S, number>)[state] += by
  }

  test('nothing, where nothing was changed', () => expect(changed(() => {})).toEqual([]))
  test.each<[string, (copy: typeof result) => void]>([
    ['a second of a station', ({ stations }) => set(stations[1]!.seconds, 'working', 1)],
    [
      'a tick of a station in another state',
      ({ stations }) => {
        set(stations[1]!.seconds, 'working', 2 ** -20)
        set(stations[1]!.seconds, 'starved', -(2 ** -20))
      },
    ],
    ['a second of a zone', ({ zones }) => set(zones[8]!.seconds, 'stopped', 1)],
    ['a second of a carrier', ({ carriers }) => set(carriers[3]!.seconds, 'moving', -1)],
    ['an output', ({ outputSeconds }) => (outputSeconds as number[]).pop()],
    ['a lap', ({ lap }) => Object.assign(lap, { mean: lap.mean! * 1.001 })],
    ['a load', (copy) => Object.assign(copy, { loads: copy.loads + 1 })],
    ['a move', ({ zones }) => Object.assign(zones[2]!, { movesOut: zones[2]!.movesOut - 1 })],
    ['an occupancy', ({ zones }) => Object.assign(zones[2]!, { occupancyMean: zones[2]!.occupancyMean + 1e-6 })],
    ['a stop', ({ breakdowns }) => Object.assign(breakdowns[0]!, { count: 0 })],
    ['a cause', ({ zones }) => Object.assign(zones[8]!.stoppedBy[0]!, { seconds: 1 })],
    ['the longest block', ({ stations }) => Object.assign(stations[0]!, { longestBlockSeconds: 0 })],
    ['a cycle', ({ stations }) => Object.assign(stations[0]!, { cycles: 0 })],
    ['products in line', (copy) => Object.assign(copy, { productsInLineMean: copy.productsInLineMean + 1e-9 })],
    ['an hour', ({ outputByHour }) => Object.assign(outputByHour, { 1: outputByHour[1]! + 1 })],
    ['a longest stay', ({ timeInLine }) => Object.assign(timeInLine, { max: timeInLine.max! + 1 })],
  ])('%s', (_, change) => expect(changed(change).length).toBeGreaterThan(0))
})
