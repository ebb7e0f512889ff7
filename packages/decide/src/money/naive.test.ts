import { expect, test } from 'vitest'
import { naiveSaving } from './naive.ts'

test('4 s × 800 units are about 53 min (common practice, no source)', () => {
  expect(Math.round(naiveSaving(4, 800, 1).minutesPerDay)).toBe(53)
})

test('9 s × 320 units × two shifts are 96 min, the naive column of the worked payback', () => {
  expect(naiveSaving(9, 320, 2).minutesPerDay).toBe(96)
})
