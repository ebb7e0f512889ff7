import { expect, test } from 'vitest'
import { BREAKS, baseLineCount, baseLinePlan, SHIFT } from './baseLine.ts'

test.each([5, 10, 17])('the invented line with %d carriers keeps the identities of a real one', (carriers) => {
  const { stations, zones, outputByHour, mean } = baseLineCount(carriers)
  for (const { shares } of stations) expect(Object.values(shares).reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 9)
  expect(zones.reduce((sum, { occupancyMean }) => sum + occupancyMean, 0)).toBeCloseTo(carriers, 2)
  expect(outputByHour.reduce((sum, each) => sum + each, 0)).toBeCloseTo(mean!.mean, 0)
})

test('breaks are what the shift is longer than its net time', () => {
  expect(BREAKS.reduce((sum, { lengthSeconds }) => sum + lengthSeconds, 0)).toBe(SHIFT.windowSeconds - SHIFT.netSeconds)
})

test('zones, corners and stations of the plan', () => {
  const zones = baseLinePlan(10)
  expect([zones.length, zones.filter(({ turn }) => turn !== null).length, zones.filter(({ station }) => station !== null).length]).toEqual([
    22, 4, 7,
  ])
})
