import { describe, expect, test } from 'vitest'
import { StatisticsError } from '../statisticsError.ts'
import { lag1 } from './lag1.ts'
import { sampleQuantile } from './sampleQuantile.ts'
import { stateShares } from './stateShares.ts'
import { Tally } from './tally.ts'
import { timeWeightedMean } from './timeWeighted.ts'

const codeOf = (make: () => unknown): string => {
  try {
    make()
  } catch (error) {
    if (error instanceof StatisticsError) return error.code
  }
  return 'no refusal'
}

describe('Tally', () => {
  test('tells nothing that it cannot know', () => {
    const tally = new Tally()
    expect([tally.mean, tally.variance, tally.sd, tally.min, tally.max]).toEqual([undefined, undefined, undefined, undefined, undefined])
    tally.add(7)
    expect([tally.mean, tally.variance, tally.sd, tally.min, tally.max]).toEqual([7, undefined, undefined, 7, 7])
  })
  test('equal values have exactly no spread', () => {
    expect(Tally.of([0.1, 0.1, 0.1, 0.1]).sd).toBe(0)
  })
  test('merging nothing, and into nothing', () => {
    const tally = Tally.of([1, 2, 4])
    tally.merge(new Tally())
    expect([tally.count, tally.mean]).toEqual([3, 7 / 3])
    const empty = new Tally()
    empty.merge(tally)
    expect([empty.count, empty.mean, empty.variance, empty.max]).toEqual([3, 7 / 3, tally.variance, 4])
  })
})

describe('timeWeightedMean', () => {
  const changes = [
    { time: 0, value: 4 },
    { time: 30, value: 6 },
  ]
  test('a change at the start counts as made before it', () => expect(timeWeightedMean(changes, 30, 40)).toBe(6))
  test('refuses a window without length, an unknown start, times that go back', () => {
    expect(codeOf(() => timeWeightedMean(changes, 30, 30))).toBe('E_DOMAIN')
    expect(codeOf(() => timeWeightedMean(changes, Number.NaN, 30))).toBe('E_DOMAIN')
    expect(codeOf(() => timeWeightedMean(changes.slice(1), 20, 40))).toBe('E_TOO_FEW')
    expect(codeOf(() => timeWeightedMean([...changes].reverse(), 30, 40))).toBe('E_DOMAIN')
  })
})

describe('stateShares', () => {
  const spells = [
    { state: 'working', from: 0, to: 6 },
    { state: 'break', from: 6, to: 10 },
  ]
  test('the denominator is told', () => {
    expect(stateShares(spells, 0, 8)).toEqual({ seconds: { working: 6, break: 2 }, shares: { working: 0.75, break: 0.25 }, denominator: 8 })
    expect(stateShares(spells, 0, 8, ['break']).denominator).toBe(6)
  })
  test('refuses spells that leave a gap or overlap, a window without length, and one of breaks alone without them', () => {
    expect(codeOf(() => stateShares(spells, 0, 11))).toBe('E_DOMAIN')
    expect(codeOf(() => stateShares([...spells, { state: 'working', from: 5, to: 7 }], 0, 10))).toBe('E_DOMAIN')
    expect(codeOf(() => stateShares(spells, 5, 5))).toBe('E_DOMAIN')
    expect(codeOf(() => stateShares(spells, 7, 9, ['break']))).toBe('E_DOMAIN')
  })
})

test('a quantile or correlation of nothing is refused', () => {
  expect(codeOf(() => sampleQuantile([], 0.5))).toBe('E_TOO_FEW')
  expect(codeOf(() => sampleQuantile([1], 1.5))).toBe('E_DOMAIN')
  expect(codeOf(() => sampleQuantile([1, Number.NaN], 0.5))).toBe('E_NOT_A_NUMBER')
  expect(codeOf(() => lag1([4]))).toBe('E_TOO_FEW')
  expect(codeOf(() => lag1([4, 4, 4]))).toBe('E_NO_SPREAD')
})
