import { Tally } from '@loopwright/stats'
import { lag1, sampleQuantile } from '@loopwright/stats/fit'
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

// the ninth, PiDigits, is not the first 5,000 digits of π (their sum is 22,679, that of the set 22,674), and its file is not at hand
test('eight of the nine sets', () =>
  expect(
    readCases('accumulators', 'moments')
      .map(({ input }) => input.set)
      .sort(),
  ).toEqual(['lew', 'lottery', 'mavro', 'michelson', 'numacc1', 'numacc2', 'numacc3', 'numacc4']))

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
