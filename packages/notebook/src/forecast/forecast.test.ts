import { expect, test } from 'vitest'
import { forecast } from './forecast.ts'

const options = { plan: 100, netSeconds: 6000, shiftsPerWeek: 2 }

test('weeks are sums of shifts, each shift in one week, those left over in none', () => {
  const { week, shift } = forecast([90, 110, 100, 95, 120], options)
  expect(week.units).toEqual([200, 195])
  expect(week.plan).toBe(200)
  // by shifts 3 of 5 meet the plan: the product 0.36 is not the share of weeks
  expect(shift.meetsPlan).toMatchObject({ successes: 3, n: 5 })
  expect(week.meetsPlan).toMatchObject({ successes: 1, n: 2 })
})

test('overtime is taken shift by shift and then averaged, never from the mean output', () => {
  // mean 100, 1 unit a minute: the shortfalls 10 and 0 take 10 and 0 minutes though the mean meets the plan
  const { overtime } = forecast([90, 110], options)
  expect(overtime!.unitsPerMinute).toBe(1)
  expect(overtime!.minutes).toEqual([10, 0])
  expect(overtime!.mean.mean).toBe(5)
  // type 7 by hand: 0 + 0.9·(10 − 0)
  expect(overtime!.p90!.point).toBeCloseTo(9, 12)
})

test('of a line without chance one shift tells all: a week is so many times as much', () => {
  const { shift, week, overtime } = forecast([90], { ...options, chance: false })
  expect(shift).toMatchObject({
    mean: { mean: 90, halfWidth: 0, n: 1 },
    p10: null,
    planVerdict: { method: 'no chance', verdict: 'not met' },
  })
  expect(week.units).toEqual([90 * options.shiftsPerWeek])
  // what is missing from 100, at 90 units in 100 min
  expect(overtime).toMatchObject({ minutes: [10 / 0.9], p90: null })
})

test('nothing made, no plan, too few shifts', () => {
  expect(forecast([0, 0], options).overtime).toBeNull()
  expect(forecast([90, 110], { ...options, plan: null })).toMatchObject({
    overtime: null,
    shift: { meetsPlan: null },
    week: { plan: null },
  })
  expect(forecast([90], options)).toMatchObject({ overtime: null, shift: { mean: null, p10: null }, week: { units: [], meetsPlan: null } })
})

test('what makes no sense is refused', () => {
  expect(() => forecast([1, 2], { ...options, netSeconds: 0 })).toThrow('net time')
  expect(() => forecast([1, 2], { ...options, shiftsPerWeek: 1.5 })).toThrow('shifts per week')
})
