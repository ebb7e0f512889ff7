import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { rampUpExample } from '../examples/decision.ts'
import { rampUpChart } from './rampUpChart.ts'

test('a dot for each week, a bar down to the promise, the plan across', () => {
  const figure = rampUpExample()
  expect(marksOf(figure, 'dot')).toHaveLength(6)
  expect(marksOf(figure, 'rule').filter(({ ink }) => ink === 'plan')[0]!.y).toEqual([3200, 3200])
  // 3340/1.03 = 3243 is the first above 3200
  expect(figure.finding).toMatch(/the plan of 3.200 a week is met on average from week 5 on\.$/i)
  expect(figure.table.rows.filter(({ marked }) => marked)).toHaveLength(4)
})

test('what is never reached, and what is from the first week on, is said', () => {
  const week = (units: number) => [{ week: 1, factor: 1, units, low: units - 10 }]
  expect(rampUpChart(week(90), { standard: 100, plan: 95 }).finding).toMatch(
    /^Week 1 makes 90 units, 10.% less than by the standard times, which are not reached in the weeks told\. The plan of 95 a week is not met on average in any week told\.$/,
  )
  expect(rampUpChart(week(100), { standard: 100, plan: null }).finding).toBe('Week 1 makes 100 units, as many as by the standard times.')
  expect(() => rampUpChart([], { standard: 1, plan: null })).toThrow(RangeError)
})
