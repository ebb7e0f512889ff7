import { expect, test } from 'vitest'
import { usualShiftsPerWeek, weeksOf, weekWords } from './weeks.ts'

test('a week adds up its shifts, each used once; those left over are not used', () => {
  expect(weeksOf([1, 2, 3, 4, 5, 6, 7], 3)).toEqual([6, 15])
  expect(weeksOf([1, 2], 3)).toEqual([])
})

test('five days of as many shifts as the calendar has; without one there are no weeks', () => {
  expect(usualShiftsPerWeek({ shiftStarts: [{ seconds: 0, clockSeconds: 0 }], shiftsPerDay: 3 })).toBe(15)
  expect(usualShiftsPerWeek({ shiftStarts: [], shiftsPerDay: 1 })).toBe(1)
  expect(usualShiftsPerWeek(undefined)).toBe(1)
})

test('windows without a calendar make no week, but a row', () => {
  expect(weekWords(10, { one: 'shift', many: 'shifts' })).toBe('a week of 10 shifts')
  expect(weekWords(5, { one: 'window', many: 'windows' })).toBe('5 windows in a row')
})
