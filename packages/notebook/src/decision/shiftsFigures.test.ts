import { beforeAll, expect, test } from 'vitest'
import { shiftsRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { shiftChanges, shiftSeed, shiftsOf, type ShiftsRuns } from './shiftsFigures.ts'

let runs: ShiftsRuns
beforeAll(async () => {
  runs = await shiftsRuns(100)
})

test('a day is a shift of each kind, a week each kind on its own days, every simulated shift once', () => {
  const { day, week } = shiftsOf(runs)
  const [early, late, night] = runs.shifts.map(({ forecast }) => forecast.shift.units)
  expect(day.units[7]).toBe(early![7]! + late![7]! + night![7]!)
  const sum = (of: readonly number[], from: number, days: number): number => of.slice(from, from + days).reduce((all, one) => all + one, 0)
  expect(week.units).toHaveLength(20)
  expect(week.units[3]).toBe(sum(early!, 15, 5) + sum(late!, 15, 5) + sum(night!, 12, 4))
  expect(week.plan).toBe(5 * 400 + 5 * 320 + 4 * 520)
})

test('nine of ten weeks make more than the sum of what nine of ten shifts make: quantiles do not add up', () => {
  const { week } = shiftsOf(runs)
  const added = runs.shifts.reduce((sum, { forecast, section }) => sum + forecast.shift.p10!.point * section.daysPerWeek, 0)
  expect(week.p10!.point).toBeGreaterThan(added)
})

test('shifts of a day have worlds of their own: their luck does not go together', () => {
  // of two independent lists of 100 a correlation beyond 0.39 comes once in 10,000 times
  const [early, late] = runs.shifts.map(({ forecast }) => forecast.shift.units)
  const off = (of: readonly number[]): number[] => of.map((one) => one - of.reduce((sum, each) => sum + each, 0) / of.length)
  const [a, b] = [off(early!), off(late!)]
  const product = (x: number[], y: number[]): number => x.reduce((sum, one, at) => sum + one * y[at]!, 0)
  expect(Math.abs(product(a, b) / Math.sqrt(product(a, a) * product(b, b)))).toBeLessThan(0.39)
  expect([shiftSeed('7', 0), shiftSeed('7', 2)]).toEqual(['7', '7-shift-3'])
})

test('overtime of a week is that of its shifts; the ramp-up adds their weeks', () => {
  const { overtime, ramp } = shiftsOf(runs)
  const of = runs.shifts.reduce((sum, { forecast, section }) => sum + forecast.overtime!.mean.mean * section.daysPerWeek, 0)
  expect(overtime).toBeCloseTo(of, 12)
  const full = runs.shifts.reduce((sum, { slower, section }) => sum + slower[0]!.mean * section.daysPerWeek, 0)
  expect(ramp.at(-1)!.units).toBeCloseTo(full, 6)
  expect(ramp[0]!.units).toBeLessThan(full)
})

test('a shift that makes nothing has no pace and takes nothing away; where none makes anything nothing is promised', () => {
  const [early, ...others] = runs.shifts
  const none = (shift: (typeof runs.shifts)[number]) => ({
    ...shift,
    slower: [],
    forecast: { ...shift.forecast, shift: { ...shift.forecast.shift, units: shift.forecast.shift.units.map(() => 0) } },
  })
  const result = shiftsOf({ ...runs, shifts: [none(early!), ...others] })
  expect(result.shifts[0]!.constraint).toBeNull()
  expect(result.day.units[0]).toBe(others.reduce((sum, { forecast }) => sum + forecast.shift.units[0]!, 0))
  expect(() => shiftsOf({ ...runs, shifts: runs.shifts.map(none) })).toThrow('nothing to promise')
})

test('what a shift changes comes after what the alternative changes; one variation at most', () => {
  const shift = { name: 'late', variation: null, changes: { plan: '90 per shift' }, crew: null, daysPerWeek: 5 }
  expect(shiftChanges({ kind: 'set', changes: { plan: '100 per shift', 'carriers.count': '4' } }, shift).changes).toEqual({
    plan: '90 per shift',
    'carriers.count': '4',
  })
  expect(shiftChanges({ kind: 'variation', variation: 'quick' }, shift).variation).toBe('quick')
  expect(() => shiftChanges({ kind: 'variation', variation: 'quick' }, { ...shift, variation: 'few' })).toThrow(
    'write what the shift changes under "set:"',
  )
})
