import { expect, test } from 'vitest'
import { balanceLoss, lineEfficiency, overallEffectiveness, STATE_TIMES, takt } from './pace.ts'

test('the base line by hand: 27 000 s for 320 units, 75.375 s at the constraint, 374.76 s of work at seven stations', () => {
  expect(takt(27_000, 320)).toBe(84.375)
  expect(lineEfficiency(358.209, 27_000, 75.375)).toBeCloseTo(1, 5)
  expect(balanceLoss([40.2, 60.2, 58.8, 59.36, 56.2, 61.8, 38.2], 75.375)).toBeCloseTo(1 - 374.76 / (7 * 75.375), 12)
})

test('ISO 22400-2:2014 by hand: 400 of 480 min producing, 2 min planned an item, 180 made, 171 good', () => {
  const found = overallEffectiveness({ production: 24_000, delay: 3000, down: 1800 }, 120, 180, 171)
  expect(found.availability).toBeCloseTo(400 / 480, 12)
  expect(found.effectiveness).toBeCloseTo(0.9, 12)
  expect(found.quality).toBeCloseTo(0.95, 12)
  expect(found.oee).toBeCloseTo((400 / 480) * 0.9 * 0.95, 12)
})

test('a worked example of the trade (from memory): 420 min planned, 47 down, one item a second, 19 271 made, 423 of them rejects', () => {
  const found = overallEffectiveness({ production: 373 * 60, delay: 0, down: 47 * 60 }, 1, 19_271, 19_271 - 423)
  // printed there: 88.81 %, 86.11 %, 97.80 %, 74.79 %
  expect([found.availability, found.effectiveness, found.quality, found.oee].map((share) => (100 * share).toFixed(2))).toEqual([
    '88.81',
    '86.11',
    '97.80',
    '74.79',
  ])
})

test('a station that makes nothing has no figure but 0', () => {
  expect(overallEffectiveness({ production: 0, delay: 0, down: 0 }, 60, 0, 0)).toEqual({
    plannedBusy: 0,
    availability: 0,
    effectiveness: 0,
    quality: 0,
    oee: 0,
  })
})

test('every state has its element', () => {
  const told = STATE_TIMES.map(({ states }) => states).join(' ')
  for (const state of ['working', 'handling', 'exchanging', 'starved', 'blocked', 'stopped', 'break']) expect(told).toContain(state)
})
