import type { RunResult } from '@loopwright/line'
import { expect, test } from 'vitest'
import { compare } from './compare.ts'
import { givenLoop, until, withBreaks, withStations, withStop } from './lineFor.ts'
import { readAloud } from './readAloud.ts'

function aRun(): RunResult {
  const loop = withStations(
    givenLoop(5, [0, 2], 1, 1),
    { zone: 0, unload: 2, load: 1 },
    { zone: 3, work: { kind: 'exponential', mean: 3 } },
  )
  const stopped = withStop(loop, { kind: 'zone', index: 1 }, 'calendar', [11, 17], [2])
  return readAloud(until(withBreaks(stopped, false, [40, 5]), 200, 20), 'compare', 0).result
}

/** every number of the run, as a path of keys */
function numbers(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value === 'number') return [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => numbers(inner, [...path, key]))
}

function withChange(run: RunResult, path: readonly (string | number)[], change: (x: number) => number): RunResult {
  const copy = structuredClone(run)
  let at = copy as unknown as Record<string | number, never>
  for (const key of path.slice(0, -1)) at = at[key]!
  const last = path.at(-1)!
  ;(at as Record<string | number, number>)[last] = change(at[last]!)
  return copy
}

test('a run equals itself, and a zero that a cause never had is no difference', () => {
  const run = aRun()
  expect(compare(run, aRun())).toEqual([])
  const zones = run.zones.map((zone) => ({ ...zone, stoppedBy: [...zone.stoppedBy, { cause: 'never', seconds: 0 }].reverse() }))
  expect(compare({ ...run, zones }, run)).toEqual([])
})

test('a change of one clock tick in any number of the run is found, but for the count of events', () => {
  const run = aRun()
  const paths = numbers(run).filter((path) => path[0] !== 'events')
  expect(paths.length).toBeGreaterThan(100)
  for (const path of paths)
    expect(
      compare(
        withChange(run, path, (x) => x + 2 ** -20),
        run,
      ),
      path.join('.'),
    ).toHaveLength(1)
  expect(compare({ ...run, events: -1 }, run)).toEqual([])
})

test('means may differ in their last digits only', () => {
  const run = aRun()
  const nudged = (factor: number): string[] =>
    compare(
      withChange(run, ['lap', 'mean'], (x) => x * factor),
      run,
    )
  expect(nudged(1 + 1e-13)).toEqual([])
  expect(nudged(1 + 1e-11)).toHaveLength(1)
})
