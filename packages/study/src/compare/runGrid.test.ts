import type { LineSpec } from '@loopwright/line'
import { law, lawTerms } from '@loopwright/line/bounds'
import { chanceVerdict } from '@loopwright/stats'
import { pairedDifference } from '@loopwright/stats/worlds'
import { factorialEffects } from '@loopwright/stats/procedures'
import { expect, test } from 'vitest'
import { factorial } from './factorial.ts'
import { GRID_POINTS_MAX, gridLineCount, runGrid } from './runGrid.ts'
import { replicate } from '../runs/replicate.ts'
import type { StudyProgress } from '../runs/studyOptions.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { withCarriers } from '../change/withCarriers.ts'

const factors = [
  { name: 'carriers', levels: ['1', '2', '3'] },
  { name: 'stations.B.work.fit', levels: ['20 s', '30 s'] },
]
const here = { seed: 'g', workers: 0 }
const COUNTS = [1, 2, 3]
const WORKS = [20, 30]

const fitted = (line: LineSpec, seconds: number, cv: number): LineSpec => ({
  ...line,
  stations: line.stations.map((station) =>
    station.name === 'B'
      ? {
          ...station,
          work: [{ task: 1, seconds: [cv === 0 ? { kind: 'constant', value: seconds } : { kind: 'lognormal', mean: seconds, cv }] }],
        }
      : station,
  ),
})
const lineAt = (cv: number, [count, work]: readonly number[], base = stationLoop()) =>
  withCarriers(fitted(base, WORKS[work!]!, cv), COUNTS[count!]!)
const pointsOf = (cv: number, plan: number | null = null, base = stationLoop()) =>
  factorial(factors).map((levels) => ({ line: lineAt(cv, levels, base), plan }))

test('every setting of a line with constant times makes what the law says, and so do the effects', async () => {
  const calm = stationLoop({ breakdowns: [], breaks: [], window: { warmupSeconds: 3600, endSeconds: 3600 + 36_000 } })
  const points = pointsOf(0, null, calm)
  const { points: told, effects, best, maybeBest } = await runGrid(points, { factors, replications: 2 }, here)
  const rates = points.map(({ line }) => lawTerms(law(line), line.carriers.count).rate)
  // one carrier: a lap of 8 moves of 2 s, tasks of 8, 20 and 6 s, three releases of 1 s; by hand
  expect(rates[0]).toBeCloseTo(1 / 53, 12)
  for (const [index, { mean, units }] of told.entries()) {
    expect(mean!.status).toBe('no spread')
    expect(Math.abs(units[0]! - rates[index]! * 36_000)).toBeLessThan(1)
  }
  expect(best).toBe(4)
  expect(maybeBest).toEqual([4])
  const made = told.map(({ units }) => units[0]!)
  expect(effects!.main[1]!.span).toMatchObject({ status: 'always differs by the same', halfWidth: 0 })
  expect(effects!.main[1]!.span!.mean).toBeCloseTo((made[0]! + made[2]! + made[4]! - made[1]! - made[3]! - made[5]!) / 3, 9)
})

test('all settings meet the same worlds: each is the line run by itself, and differences are paired', async () => {
  const request = { factors, base: { line: lineAt(0.3, [1, 0]), plan: 100 }, replications: 12 }
  const points = pointsOf(0.3, 100)
  const result = await runGrid(points, request, here)
  const runs = await Promise.all(points.map(({ line }) => replicate(line, request, here)))
  const alone = runs.map((each) => each.map(({ output }) => output))
  expect(result.points.map(({ units }) => units)).toEqual(alone)
  expect(result).toMatchObject({ base: 2, outside: null, partial: false, level: 0.95 })
  expect(result.points[2]!.toBase).toBeNull()
  expect(result.points[4]!.toBase).toEqual(pairedDifference(alone[4]!, alone[2]!, 1 - 0.05 / 5))
  expect(result.points[4]!.meetsPlan).toMatchObject({ n: 12, successes: alone[4]!.filter((made) => made >= 100).length })
  const { successes } = result.points[4]!.meetsPlan!
  expect(result.points[4]!.planVerdict).toEqual(chanceVerdict(successes, 12))
  expect(result.effects).toEqual(factorialEffects([3, 2], alone))
  const means = alone.map((each) => each.reduce((sum, made) => sum + made, 0) / 12)
  expect(result.best).toBe(means.indexOf(Math.max(...means)))
  expect(result.nearBest).toContain(result.best)
})

test('the line as it stands is run beside the grid where it is no setting of it', async () => {
  const base = { line: lineAt(0.5, [0, 0]), plan: null }
  const { base: at, outside, points } = await runGrid(pointsOf(0.3), { factors, base, replications: 3 }, here)
  expect(at).toBeNull()
  const units = (await replicate(base.line, { replications: 3 }, here)).map(({ output }) => output)
  expect([gridLineCount(pointsOf(0.3), base), gridLineCount(pointsOf(0.3), pointsOf(0.3)[4])]).toEqual([7, 6])
  expect(outside).toMatchObject({ levels: [], carriers: 1, units })
  expect(points[0]!.toBase).toEqual(pairedDifference(points[0]!.units, units, 1 - 0.05 / 6))
})

test('stopped: all settings have the same whole replications, those of the start', { tags: 'long' }, async () => {
  const stop = new AbortController()
  const onProgress = ({ done }: StudyProgress) => done >= 6 * 7 && stop.abort()
  const request = { factors, replications: 400 }
  const stopped = await runGrid(pointsOf(0.3), request, { seed: 'g', workers: 1, signal: stop.signal, onProgress })
  const n = stopped.points[0]!.units.length
  expect(stopped.partial).toBe(true)
  expect(n).toBeGreaterThanOrEqual(5)
  expect(n).toBeLessThan(400)
  const whole = await runGrid(pointsOf(0.3), { ...request, replications: n }, here)
  expect(stopped).toEqual({ ...whole, replications: 400, partial: true })
})

test('stopped before the start: no numbers, and nothing that looks like one', async () => {
  const options = { seed: 'g', workers: 1, signal: AbortSignal.abort() }
  const none = await runGrid(pointsOf(0.3), { factors, replications: 4 }, options)
  expect(none).toMatchObject({ partial: true, best: null, maybeBest: [], nearBest: [], effects: null })
  expect(none.points[0]).toMatchObject({ units: [], mean: null, p10: null, toBase: null })
})

test('a setting that stands still is never the best', async () => {
  const full = [{ name: 'carriers', levels: ['3', '6'] }]
  // a transfer takes a carrier only if the zone behind it is free: with a carrier in each other zone nobody can move
  const stuck = stationLoop({
    zones: stationLoop().zones.map((zone, index) =>
      index === 5 || index === 7 ? { ...zone, transfer: { liftSeconds: 1, lowerSeconds: 1, enterOnlyIfExitClear: true } } : zone,
    ),
  })
  const points = [3, 6].map((count) => ({ line: withCarriers(stuck, count), plan: null }))
  const { points: told, best } = await runGrid(points, { factors: full, replications: 2 }, here)
  expect(told.map(({ gridlocks }) => gridlocks)).toEqual([0, 2])
  expect(best).toBe(0)
})

test('refused, with what would be right', async () => {
  const request = { factors, replications: 2 }
  const tried = (points: Parameters<typeof runGrid>[0], change: object = {}) =>
    expect(runGrid(points, { ...request, ...change }, here)).rejects
  const points = pointsOf(0)
  await tried(points, { replications: 1 }).toThrow('at least 2 replications, not 1')
  await tried(points.slice(1)).toThrow('the factors say 6 settings, and 5 are given')
  await tried([points[0]!], { factors: [{ name: 'a', levels: ['x'] }] }).toThrow('at least two settings')
  const many = { name: 'a', levels: Array.from({ length: GRID_POINTS_MAX }, (_, index) => `${index}`) }
  await tried(points, { factors: [many, factors[1]!] }).toThrow('500 × 2 = 1000 settings is too large, 2000 runs with 2 each')
  const longer = { line: stationLoop({ window: { warmupSeconds: 3600, endSeconds: 9000 } }), plan: null }
  await tried([...points.slice(0, 5), longer]).toThrow('different windows (7200 and 9000)')
})
