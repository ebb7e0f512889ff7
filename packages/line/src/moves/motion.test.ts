/** Times of moves against worked values; MODEL.md §3 (uniformly accelerated motion, any textbook of mechanics). */
import { toGrid } from '@loopwright/kernel'
import { describe, expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { clearTime, derivedTimes, distinctPaces, moveTime, PACE_CLEAR, REST, SPEED } from './motion.ts'

describe('a drive of 15 m/min with 0.4 m/s², zones of 1.5 m, carriers of 1.2 m, sensor v²/2a before the stop point, reaction 0.15 s', () => {
  // v = 0.25, a = 0.4: ramp v/2a = 0.3125 s, x = v²/2a = 0.078125 m
  test('move 6 s at speed, 6.3125 s with one ramp, 6.625 s with two', () => {
    expect([0, 1, 2].map((ramps) => moveTime(1.5, 0.25, 0.4, ramps as 0 | 1 | 2))).toEqual([6, 6.3125, 6.625])
  })
  test('clear (1.2 − 0.078125)/0.25 + 0.15 = 4.6375 s at speed, 0.3125 s more from rest', () => {
    expect(clearTime(1.2, 0.078125, 0.25, 0.4, 0.15, SPEED)).toBeCloseTo(4.6375, 12)
    expect(clearTime(1.2, 0.078125, 0.25, 0.4, 0.15, REST)).toBe(4.95)
  })
  test('out of a transfer, sensor at the stop point: 4.8 + 0.3125 + 0.15 = 5.2625 s from rest', () => {
    expect(clearTime(1.2, 0, 0.25, 0.4, 0.15, REST)).toBeCloseTo(5.2625, 12)
  })
})

describe('too short to reach the speed', () => {
  // v = 0.5, a = 0.5: x = 0.25 m, ramp = 0.5 s
  test('one ramp: √(2d/a) below x, two: 2·√(d/a) below 2x', () => {
    expect(moveTime(0.1, 0.5, 0.5, 1)).toBe(Math.sqrt(0.4))
    expect(moveTime(0.1, 0.5, 0.5, 2)).toBe(2 * Math.sqrt(0.2))
    expect(moveTime(0.1, 0.5, 0.5, 0)).toBe(0.2)
    expect(moveTime(0.4, 0.5, 0.5, 1)).toBeCloseTo(1.3, 12)
    expect(moveTime(0.4, 0.5, 0.5, 2)).toBe(2 * Math.sqrt(0.8))
  })
  test('both forms agree where one passes into the other', () => {
    expect(moveTime(0.25, 0.5, 0.5, 1)).toBe(Math.sqrt((2 * 0.25) / 0.5))
    expect(moveTime(0.5, 0.5, 0.5, 2)).toBe(2 * Math.sqrt(0.5 / 0.5))
    expect(clearTime(0.25, 0, 0.5, 0.5, 0, REST)).toBe(Math.sqrt((2 * 0.25) / 0.5))
  })
  test('clear from rest: √(2e/a) + reaction below x', () => {
    expect(clearTime(0.5, 0.375, 0.5, 0.5, 0.25, REST)).toBe(Math.sqrt(0.5) + 0.25)
  })
})

test('without acceleration there is no ramp', () => {
  expect([0, 1, 2].map((ramps) => moveTime(3, 0.5, null, ramps as 0 | 1 | 2))).toEqual([6, 6, 6])
  expect([REST, SPEED].map((start) => clearTime(1, 0.5, 0.5, null, 0.25, start as 0 | 1))).toEqual([1.25, 1.25])
})

test('the times of all paths, on the clock grid', () => {
  const spec = smallLoop({
    zones: 3,
    start: [0],
    transfers: { 2: { lift: 1, lower: 1 } },
    across: [2],
    train: [1],
    stagger: 0.1,
    drive: { width: 3 },
  })
  const { move, clear } = derivedTimes(spec)
  // 4·path + 2·start + end: from rest to rest, to speed; from speed to rest, to speed
  expect([...move]).toEqual([6, 5, 5, 4, 6, 5, 5, 4, 6, 5, 5, 4])
  // single 2.5 / 1.5; train the stagger, rounded to the grid; out of the transfer, sideways, sensor at the stop point: 3 + 1 + 0.5, 3 + 0.5
  expect([...clear]).toEqual([2.5, 1.5, toGrid(0.1), toGrid(0.1), 4.5, 3.5])
  expect(toGrid(0.1)).toBe(104858 / 2 ** 20)
})

test('paths alike share a pace', () => {
  const move = Float64Array.of(1, 2, 3, 4, 5, 6, 7, 8, 1, 2, 3, 4, 1, 2, 3, 4)
  const clear = Float64Array.of(9, 10, 11, 12, 9, 10, 9, 13)
  const { pathPace, paceSeconds } = distinctPaces({ move, clear })
  expect([...pathPace]).toEqual([0, 8, 0, 16])
  expect([...paceSeconds.subarray(8, 14)]).toEqual([5, 6, 7, 8, 11, 12])
  expect(paceSeconds[16 + PACE_CLEAR + SPEED]).toBe(13)
})

test('what the drive does not give is not a number', () => {
  const spec = smallLoop({ zones: 2, start: [0] })
  const bare = { ...spec, paths: spec.paths.map((path) => ({ ...path, speedMetresPerSecond: null })) }
  expect([...derivedTimes(bare).move].every(Number.isNaN)).toBe(true)
  expect([...derivedTimes(bare).clear].every(Number.isNaN)).toBe(true)
  const unknown = { ...spec, carriers: { ...spec.carriers, lengthMetres: null } }
  expect([...derivedTimes(unknown).move]).toEqual([6, 5, 5, 4, 6, 5, 5, 4])
  expect([...derivedTimes(unknown).clear].every(Number.isNaN)).toBe(true)
})
