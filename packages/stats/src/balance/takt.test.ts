import { expect, test } from 'vitest'
import { stationLoad, takt } from './takt.ts'

test('a station against takt', () => {
  const at = takt(3600, 90)
  expect(at.taktSeconds).toBe(40)
  expect([34, 34.1, 40, 40.1].map((cycle) => stationLoad(cycle, at))).toEqual([
    'ok',
    'no room for scatter',
    'no room for scatter',
    'over takt',
  ])
})

test('refused', () => {
  expect(() => takt(0, 90)).toThrow('The available time is 0')
  expect(() => takt(3600, 0)).toThrow('The demand is 0')
})
