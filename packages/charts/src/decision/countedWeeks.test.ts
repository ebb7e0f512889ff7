import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { countedWeeksExample } from '../examples/decision.ts'
import { type CountedWeek, countedWeeks } from './countedWeeks.ts'

test('weeks of other lengths stand on one scale, units a shift', () => {
  const figure = countedWeeksExample()
  expect(marksOf(figure, 'dot').map(({ y }) => y)).toEqual([331, 320.5, 317.5, 329, 318])
  expect(marksOf(figure, 'rule').filter(({ ink }) => ink === 'whisker')[2]!.y).toEqual([322.5, 337.5])
  expect(figure.finding).toBe('Of 5 weeks counted 3 lie below the band, in which nine of ten lie if the forecast holds.')
})

test('each side is said', () => {
  const week = (side: CountedWeek['side']): CountedWeek => ({ name: side, units: 10, shifts: 1, expected: 10, low: 9, high: 11, side })
  const of = (...sides: CountedWeek['side'][]): string => countedWeeks(sides.map(week), { plan: null }).finding
  expect(of('within', 'within')).toBe('All 2 weeks counted lie within their band.')
  expect(of('above')).toBe('The one week counted lies above its band.')
  expect(of('below', 'above', 'within')).toContain('1 lies below and 1 lies above the band')
  expect(() => countedWeeks([], { plan: null })).toThrow(RangeError)
})
