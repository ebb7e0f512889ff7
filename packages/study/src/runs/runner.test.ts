import { meanInterval } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { inCommon, type Runner, unitsOf, withRunner } from './runner.ts'
import type { StudyProgress } from './studyOptions.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { withCarriers } from '../change/withCarriers.ts'

const lines = [stationLoop(), withCarriers(stationLoop(), 2)]

test('one thread, two, or none: the same rows, wherever the worlds begin', async () => {
  const last = (runner: Runner) => runner.run(lines, { from: 2, to: 5 })
  const here = await withRunner({ seed: 'a', workers: 0 }, null, last)
  for (const workers of [1, 2]) expect(await withRunner({ seed: 'a', workers }, null, last)).toEqual(here)
  expect(await withRunner({ seed: 'b', workers: 0 }, null, (runner) => runner.run(lines, { seed: 'a', from: 2, to: 5 }))).toEqual(here)
  const from0 = await withRunner({ seed: 'a', workers: 0 }, null, (runner) => runner.run(lines, { from: 0, to: 5 }))
  expect(from0.map((each) => unitsOf(each).slice(2))).toEqual(here.map(unitsOf))
})

test('told to stop before the start: no rows, and it says so', async () => {
  await withRunner({ seed: 'a', workers: 1, signal: AbortSignal.abort() }, null, async (runner) => {
    const ran = await runner.run(lines, { from: 0, to: 5 })
    expect(ran.map(({ rows }) => rows.length)).toEqual([0, 0])
    expect(runner.stopped).toBe(true)
  })
})

test('progress counts up to what was expected', async () => {
  const told: StudyProgress[] = []
  await withRunner({ seed: 'a', workers: 1, onProgress: (progress) => told.push({ ...progress }) }, null, async (runner) => {
    runner.expect(10, 'which of two')
    await runner.run(lines, { from: 0, to: 3 })
  })
  expect(told.at(-1)).toMatchObject({ done: 6, total: 10, recalled: 0, what: 'which of two' })
})

test('progress tells the worst half-width so far, as a share of its mean', async () => {
  const told: StudyProgress[] = []
  const options = { seed: 'a', workers: 1, onProgress: (progress: StudyProgress) => told.push(progress) }
  const ran = await withRunner(options, null, (runner) => runner.run(lines, { from: 0, to: 6 }))
  const shares = ran.map((each) => meanInterval(unitsOf(each))).map(({ mean, halfWidth }) => halfWidth / mean)
  expect(told[0]!.precision).toBeNull()
  expect(told.at(-1)!.precision).toBeCloseTo(Math.max(...shares), 12)
})

test('in common: the shortest decides', () => {
  const layout = { units: 0 } as never
  const row = new Float64Array(1)
  expect(
    inCommon([
      { layout, rows: [row, row] },
      { layout, rows: [row] },
    ]).map(({ rows }) => rows.length),
  ).toEqual([1, 1])
})
