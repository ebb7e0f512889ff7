/**
 * Any line that a file can say, with odd numbers and all features, run by the event engine: every instant keeps its invariants, the order in which simultaneous
 * timers are stored and a trace change nothing, and the identities of MODEL.md §11 hold. What the numbers should be is told by hand-computed timelines elsewhere.
 */
import { type LineSpec, type RunResult, simulate, Trace } from '@loopwright/line'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { anyLine } from './helpers/anyLine.ts'
import { lively } from './helpers/lively.ts'
import { total } from './helpers/spent.ts'

/** What a line has, so that none is missing; fewest are safety stops that stop, in about one line of a hundred. */
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

test('400 lines of any kind keep the invariants and the identities, in any storing order', () => {
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
    { numRuns: 400, seed: 20261129 },
  )
  for (const name of Object.keys(FEATURES)) expect([name, (seen.get(name) ?? 0) >= 4]).toEqual([name, true])
})

function keepsIdentities(line: LineSpec, run: RunResult): void {
  const seconds = line.window.endSeconds - line.window.warmupSeconds
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0)
  for (const { seconds: states } of [...run.stations, ...run.zones, ...run.carriers]) expect(total(states)).toBeCloseTo(seconds, 6)
  expect(sum(run.zones.map(({ occupancyMean }) => occupancyMean)) + run.storeMean).toBeCloseTo(line.carriers.count, 6)
  const off = run.output + run.rejectedTakenOff
  expect(off - line.carriers.count <= run.loads && run.loads <= off + line.carriers.count).toBe(true)
  for (const supply of run.supplies) expect(supply.turnedAway).toBeLessThanOrEqual(supply.arrivals)
}
