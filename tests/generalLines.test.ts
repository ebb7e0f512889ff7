/**
 * Any line that a file can say, with odd numbers and all features, run by the event engine: every instant keeps its invariants, the order in which simultaneous
 * timers are stored and a trace change nothing, and the identities of MODEL.md §11 hold. What the numbers should be is told by hand-computed timelines elsewhere.
 */
import { type LineSpec, type RunResult, simulate, Trace } from '@loopwright/line'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { anyLine } from './golden/scenario/anyLine.ts'

/** seconds; a longer stretch would only take longer */
const STRETCH = 1500
const KINDS = new Set([
  'constant',
  'uniform',
  'triangular',
  'pert',
  'exponential',
  'lognormal',
  'gamma',
  'weibull',
  'empirical',
  'replay',
  'discrete',
  'occasional',
  'limited',
])

/** The same line with times of some seconds in place of all its distributions, so that much happens in a short stretch. */
function lively(line: LineSpec): LineSpec {
  const walk = (value: unknown, key: string): unknown => {
    if (Array.isArray(value)) return value.map((item) => walk(item, key))
    if (typeof value !== 'object' || value === null) return value
    if ('kind' in value && KINDS.has(value.kind as string)) {
      const scale = 1 + (JSON.stringify(value).length % 7)
      return { kind: 'exponential', mean: key === 'timeToFailureSeconds' ? 20 * scale : scale }
    }
    return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, walk(inner, name)]))
  }
  const quick = walk(line, '') as LineSpec
  const isLoop =
    line.paths.length === line.zones.length && line.paths.every(({ from, to }, p) => from === p && to === (p + 1) % line.zones.length)
  return {
    ...quick,
    ...{ stations: quick.stations.map(busy), carriers: isLoop ? roomy(quick) : quick.carriers },
    paths: isLoop && quick.stations.length > 0 && line.zones.length % 2 === 0 ? pushed(quick) : quick.paths,
    window: { warmupSeconds: STRETCH / 5, endSeconds: STRETCH },
  }
}

/** The first station loads and unloads, so that products go round. */
const busy = (station: LineSpec['stations'][number], index: number): LineSpec['stations'][number] =>
  index > 0 ? station : { ...station, load: station.load ?? [], unload: station.unload ?? [], accepts: 'all' }

/** A loop half full goes round. */
function roomy({ carriers, zones }: LineSpec): LineSpec['carriers'] {
  const places = zones.filter(({ transfer }) => transfer?.enterOnlyIfExitClear !== true).length
  return { ...carriers, count: Math.max(1, places >> 1), start: 'spread' }
}

/** The last path of a loop by hand. */
const pushed = ({ paths }: LineSpec): LineSpec['paths'] =>
  paths.map((path, p) =>
    p < paths.length - 1
      ? path
      : { ...path, manual: { kind: 'push', station: 0 }, moveSeconds: { kind: 'exponential', mean: 4 }, clearSeconds: 'move' },
  )

/** What a line has, so that none is rare. */
const FEATURES: Readonly<Record<string, (line: LineSpec, run: RunResult) => boolean>> = {
  operators: (line) => line.operators.length > 0,
  'pushes and pulls': (_, { handlings }) => handlings.some(({ count }) => count > 0),
  'arriving products': (_, { supplies }) => supplies.some(({ arrivals }) => arrivals > 0),
  receivers: (line, { output }) => output > 0 && line.stations.some(({ receiver }) => receiver !== null),
  inspections: (line) => line.inspections.length > 0,
  sections: (line) => line.sections.length > 1,
  'safety stops': (_, { safetyStops }) => safetyStops.some(({ count }) => count > 0),
  crews: (line) => line.repairCrews !== null && line.repairCrews < line.breakdowns.length,
  graphs: (line) => line.paths.length !== line.zones.length,
  store: (line) => line.carriers.start === 'store',
}

test('300 lines of any kind keep the invariants and the identities, in any storing order', () => {
  const seen = new Map<string, number>()
  fc.assert(
    fc.property(anyLine, (whole) => {
      const line = lively(whole)
      const [trace, again] = [new Trace(), new Trace()]
      const run = simulate(line, { seed: 'any', replication: 0, trace, verify: true })
      const backwards = simulate(line, { seed: 'any', replication: 0, trace: again, verify: true, backwards: true })
      expect(again.hash.digest()).toBe(trace.hash.digest())
      expect(backwards).toEqual(run)
      expect(simulate(line, { seed: 'any', replication: 0 })).toEqual(run)
      keepsIdentities(line, run)
      for (const [name, has] of Object.entries(FEATURES)) if (has(line, run)) seen.set(name, (seen.get(name) ?? 0) + 1)
    }),
    { numRuns: 300, seed: 20261127 },
  )
  for (const name of Object.keys(FEATURES)) expect([name, (seen.get(name) ?? 0) >= 10]).toEqual([name, true])
})

function keepsIdentities(line: LineSpec, run: RunResult): void {
  const seconds = line.window.endSeconds - line.window.warmupSeconds
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0)
  for (const { seconds: states } of [...run.stations, ...run.zones, ...run.carriers]) expect(sum(states)).toBeCloseTo(seconds, 6)
  expect(sum(run.zones.map(({ occupancyMean }) => occupancyMean)) + run.storeMean).toBeCloseTo(line.carriers.count, 6)
  const off = run.output + run.rejectedTakenOff
  expect(off - line.carriers.count <= run.loads && run.loads <= off + line.carriers.count).toBe(true)
  for (const supply of run.supplies) expect(supply.turnedAway).toBeLessThanOrEqual(supply.arrivals)
}
