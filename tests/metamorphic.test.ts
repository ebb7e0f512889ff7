/** Lines that must give the same numbers, or exactly scaled ones, though they are written otherwise. */
import { readFileSync } from 'node:fs'
import { type LineSpec, type RunResult, simulate } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseDocument, stringify } from 'yaml'
import { smallLoop, type Wish } from './helpers/smallLoop.ts'
import { randomLine } from './oracle/readAloud/randomLine.ts'
import { mapStates } from './helpers/spent.ts'

const run = (line: LineSpec): RunResult => simulate(line, { seed: 'meta', replication: 0 })
const LINES = fc.sample(randomLine(), { seed: 31, numRuns: 60 })

const BUSY: Wish = {
  zones: 8,
  start: 4,
  stations: [
    { at: 0, unload: 2, load: 6 },
    { at: 3, work: { kind: 'lognormal', mean: 15, cv: 0.3 }, release: 1 },
    { at: 5, work: 9 },
  ],
  stops: [{ name: 'jam', on: { kind: 'station', index: 1 }, after: { kind: 'exponential', mean: 200 }, repair: 20 }],
  breaks: [[500, 60]],
  until: 4000,
}

test('a stop that never comes changes nothing but its own line in the result', () => {
  for (const line of LINES) {
    const never: LineSpec['breakdowns'][number] = {
      name: 'a stop that never comes',
      part: { kind: 'zone', index: 0 },
      clock: 'calendar',
      timeToFailureSeconds: { kind: 'constant', value: 2 ** 30 },
      repairSeconds: { kind: 'constant', value: 5 },
    }
    const { breakdowns, events, ...told } = run({ ...line, breakdowns: [...line.breakdowns, never] })
    const { breakdowns: own, events: ownEvents, ...plain } = run(line)
    expect(told).toEqual(plain)
    expect([breakdowns.slice(0, -1), events]).toEqual([own, ownEvents])
  }
})

test('a variant of share 0 changes nothing', () => {
  const line = smallLoop({ ...BUSY, variants: 2, mix: { kind: 'random', shares: [3, 1] } })
  const more: LineSpec = {
    ...line,
    variants: [...line.variants, 'never made'],
    mix: { kind: 'random', shares: [3, 1, 0] },
    stations: line.stations.map((station) => {
      const third = (duty: typeof station.work) => duty?.map((task) => ({ ...task, seconds: [...task.seconds, task.seconds[0]!] })) ?? null
      return { ...station, unload: third(station.unload), load: third(station.load), work: third(station.work) }
    }),
  }
  expect(run(more)).toEqual(run(line))
})

test('an operator who is never needed changes nothing but the list of operators', () => {
  const line = smallLoop(BUSY)
  const named = { ...line, operators: line.stations.map((_, s) => ({ name: `op${s}`, stations: [s], start: s })) }
  const spare = { ...named, operators: [...named.operators, { name: 'spare', stations: [1], start: 1 }] }
  const { handlings: _, ...told } = run(spare)
  const { handlings: __, ...own } = run(named)
  expect(told).toEqual(own)
})

test('a loop written as a graph: two ways between the same zones, for loaded and for empty carriers', () => {
  const loop = smallLoop(BUSY)
  const [first, ...others] = loop.paths
  const ways = (['loaded', 'empty'] as const).map((load) => ({ ...first!, takes: { ...first!.takes, load } }))
  const graph: LineSpec = { ...loop, paths: [ways[0]!, ...others, ways[1]!] }
  const { events: _, ...told } = run(graph)
  const { events: __, ...own } = run(loop)
  expect(told).toEqual(own)
})

describe('all times doubled', () => {
  // Distances and times are whole multiples of powers of two, so that nothing is rounded.
  const wish: Wish = {
    ...BUSY,
    stations: BUSY.stations!.map((station) => (station.at === 3 ? { at: 3, work: 15, release: 1 } : station)),
    stops: [{ ...BUSY.stops![0]!, after: [150, 400], repair: 20 }],
  }
  const line = smallLoop(wish)
  const doubled: LineSpec = {
    ...double(line),
    paths: line.paths.map((path) => ({
      ...path,
      speedMetresPerSecond: path.speedMetresPerSecond! / 2,
      accelerationMetresPerSecondSquared: path.accelerationMetresPerSecondSquared! / 4,
    })),
  }

  test('doubles every time that is told, and no count', () => {
    const [once, twice] = [run(line), run(doubled)]
    expect(twice.outputSeconds).toEqual(once.outputSeconds.map((at) => 2 * at))
    expect(twice.stations.map(({ seconds }) => seconds)).toEqual(once.stations.map(({ seconds }) => mapStates(seconds, (time) => 2 * time)))
    expect(twice.zones.map(({ occupancyMean }) => occupancyMean)).toEqual(once.zones.map(({ occupancyMean }) => occupancyMean))
    expect([twice.output, twice.loads, twice.events]).toEqual([once.output, once.loads, once.events])
    expect(once.output).toBeGreaterThan(50)
  })
})

/** Every key that ends in Seconds, and every value of a distribution, twice as long. */
function double<T>(value: T, isTime = false): T {
  if (typeof value === 'number') return (isTime ? 2 * value : value) as T
  if (Array.isArray(value)) return value.map((item) => double(item as unknown, isTime)) as T
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, double(inner as unknown, isTime || /[sS]econds$/.test(key))]),
  ) as T
}

test('the order of keys in a scenario file means nothing where the page gives it no meaning', () => {
  for (const name of ['outdoor-unit-base-line', 'test-and-repair-line']) {
    const text = readFileSync(new URL(`../scenarios/${name}.yaml`, import.meta.url), 'utf8')
    const plain = parseDocument(text).toJS() as Record<string, unknown>
    // the order of zones, paths, stations, tasks, variants, operators and stops is theirs; that of all other keys is not
    const ordered = new Set(['zones', 'stations', 'variants', 'options', 'operators', 'stops', 'unload', 'load', 'work', 'sections'])
    const turned = (value: unknown, key: string): unknown => {
      if (Array.isArray(value)) return value.map((item) => turned(item, ''))
      if (typeof value !== 'object' || value === null) return value
      const entries = Object.entries(value).map(([inner, one]) => [inner, turned(one, inner)] as const)
      return Object.fromEntries(ordered.has(key) ? entries : entries.reverse())
    }
    const again = readScenario(stringify(turned(plain, '')))
    expect(again.problems.map(({ code }) => code)).toEqual(['W_FORMAT_FIRST'])
    expect(again.scenario).toEqual(readScenario(text).scenario)
  }
})
