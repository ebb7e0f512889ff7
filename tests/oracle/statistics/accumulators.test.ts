import { lag1, type Spell, sampleQuantile, stateShares, Tally, timeWeightedMean } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { type Case, expectRelative, readCases } from './vectors.ts'

describe('moments of the NIST reference data sets', () => {
  test.each(readCases('accumulators', 'moments'))('$id $input.set', (one: Case) => {
    const data = dataOf(one)
    const tolerance = one.tolerance ?? 1e-12
    expect(data).toHaveLength(one.input.n)
    const tally = Tally.of(data)
    expectRelative(tally.mean, Number(one.expect.mean), tolerance)
    expectRelative(tally.sd, Number(one.expect.sd), tolerance)
    expectRelative(lag1(data), Number(one.expect.lag1), tolerance)
  })
})

/** the long sets are given by their recipe: a first value, then two in turn */
function dataOf({ input }: Case): number[] {
  if (input.data !== undefined) return input.data
  const [first, low, high] = (input.recipe as string).match(/\d+\.\d/g)!.map(Number)
  return [first!, ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low! : high!))]
}

describe('merging', () => {
  test.each(readCases('accumulators', 'merge of two tallies'))('$id', ({ input, expect: want }) => {
    const tally = Tally.of(input.a)
    tally.merge(Tally.of(input.b))
    expect(tally.count).toBe(want.n)
    expectRelative(tally.mean, want.mean, 1e-12)
    expectRelative(tally.sd, want.sd, 1e-12)
    expect([tally.min, tally.max]).toEqual([want.min, want.max])
  })
})

test.each(readCases('accumulators', 'quantile type 7'))('$id quantile, type 7', ({ input, expect: want }) => {
  expectRelative(sampleQuantile(input.data, input.p), want.value, 1e-12)
})

test.each(readCases('accumulators', 'time-weighted mean'))('$id time-weighted mean', ({ input, expect: want }) => {
  const changes = input.changes.map(([time, value]: [number, number]) => ({ time, value }))
  expectRelative(timeWeightedMean(changes, input.window[0], input.window[1]), want.value, 1e-12)
})

test.each(readCases('accumulators', 'state shares'))('$id state shares', ({ input, expect: want }) => {
  const spells: Spell[] = input.events.map(([state, from, to]: [string, number, number]) => ({ state, from, to }))
  const [start, end] = input.window
  const all = stateShares(spells, start, end)
  expect(all.seconds).toEqual(want.seconds)
  expectShares(all.shares, want.shares)
  expectShares(stateShares(spells, start, end, ['break']).shares, want.sharesWithoutBreak)
})

function expectShares(got: Readonly<Record<string, number>>, want: Readonly<Record<string, number>>): void {
  expect(Object.keys(got).sort()).toEqual(Object.keys(want).sort())
  for (const [state, share] of Object.entries(want)) expectRelative(got[state], share, 1e-12)
  expect(Math.abs(Object.values(got).reduce((sum, share) => sum + share, 0) - 1)).toBeLessThan(1e-12)
}
