import { meanOf } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { netRate, overtimeMinutes } from './overtime.ts'

test('by hand: two shifts of 450 min at 320 units on average, plan 320', () => {
  // 320/450 units a minute; the first lacks 20
  expect(overtimeMinutes([300, 340], 320, 27_000)).toEqual([20 / (320 / 450), 0])
})

test('a good shift is never set against a bad one', () => {
  expect(meanOf([300, 340])).toBe(320)
  expect(meanOf(overtimeMinutes([300, 340], 320, 27_000)!)).toBeGreaterThan(0)
})

test('where nothing is made there is no rate to make it up with', () => {
  expect(overtimeMinutes([0, 0], 10, 60)).toBeNull()
  expect(netRate([], 60)).toBeNull()
})
