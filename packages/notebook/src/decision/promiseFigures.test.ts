import { beforeAll, expect, test } from 'vitest'
import { promiseRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { needsUnits, promiseOf, type PromiseRuns, workSeconds } from './promiseFigures.ts'

let runs: PromiseRuns
beforeAll(async () => {
  runs = await promiseRuns(40)
})

test('pace by hand: takt 27 000/320, efficiency of the cycle by mean times, balance loss of 374.76 s at seven stations', () => {
  const { takt, lineEfficiency, balanceLoss, constraint } = promiseOf(runs)
  const mean = runs.forecast.shift.units.reduce((sum, one) => sum + one, 0) / 40
  expect(takt).toBe(84.375)
  expect(lineEfficiency).toBeCloseTo(mean / (27_000 / 75.375), 4)
  expect(balanceLoss).toBeCloseTo(1 - 374.76 / (7 * 75.375), 4)
  expect(workSeconds(runs.scenario)[5]).toBeCloseTo(61.8, 9)
  expect(constraint!.station).toBe('Tightness test')
  const { oee, availability, effectiveness, quality } = constraint!.effectiveness
  expect(oee).toBeCloseTo(availability * effectiveness * quality, 12)
})

test('a line that makes nothing promises nothing', () => {
  expect(() => needsUnits([0, 0])).toThrow('there is nothing to promise')
  expect(() => needsUnits([0, 3])).not.toThrow()
})

test('the ramp-up grows to the standard; without learning there is none', () => {
  const { ramp } = promiseOf(runs)
  expect(ramp).toHaveLength(6)
  expect(ramp[0]!.factor).toBeGreaterThan(1.05)
  expect(ramp.at(-1)!.factor).toBe(1)
  expect(ramp.every(({ low, units }) => low < units)).toBe(true)
  expect(promiseOf({ ...runs, section: { ...runs.section, learning: null } }).ramp).toEqual([])
})
