import { allPairs, controlVariate } from '@loopwright/stats/worlds'
import { batchMeans } from '@loopwright/stats/procedures'
import { expect, test } from 'vitest'
import { expectOfSize, expectRelative, readCases } from './vectors.ts'

test.each(readCases('batch-means'))('$id batch means', ({ input, expect: want }) => {
  const got = batchMeans(input.data)
  expect(got.candidates).toHaveLength(want.table.length)
  want.table.forEach((row: Record<string, number>, i: number) => {
    const one = got.candidates[i]!
    expect([one.batches, one.batchLength, one.droppedFront]).toEqual([row.b, row.m, row.droppedFront])
    expectRelative(one.mean, row.mean!, 1e-9)
    expectRelative(one.halfWidth, row.halfWidth!, 1e-9)
    expectOfSize(one.dependence, row.C!, 1e-9)
    expectRelative(one.pValue, row.p!, 1e-9)
  })
  expect(got.chosen?.batches).toBe(want.chosen)
})

test.each(readCases('compare', 'all pairs, bonferroni'))('$id all pairs', ({ input, expect: want }) => {
  const columns = input.data[0].map((_: number, i: number) => input.data.map((row: number[]) => row[i]))
  const got = allPairs(columns, input.level)
  expect(got.map((pair) => [pair.first + 1, pair.second + 1])).toEqual(want.pairs.map((pair: { i: number; l: number }) => [pair.i, pair.l]))
  want.pairs.forEach((pair: Record<string, number>, at: number) => {
    const { difference } = got[at]!
    expectOfSize(difference.mean, pair.mean!, 1e-10)
    expectOfSize(difference.sd ** 2, pair.variance!, 1e-10)
    expectOfSize(difference.low, pair.low!, 1e-10)
    expectOfSize(difference.high, pair.high!, 1e-10)
    expectOfSize(difference.pairingGain, pair.pairingGain!, 1e-10)
  })
})

test.each([...readCases('controls', 'one control'), ...readCases('controls', 'two controls')])('$id $kind', ({ input, expect: want }) => {
  const controls = input.C.map((values: number[], q: number) => ({ name: `control ${q + 1}`, values, mean: input.mu[q] }))
  const got = controlVariate(input.Y, controls)
  expectRelative(got.plain.mean, want.plainMean, 1e-9)
  expectRelative(got.plain.halfWidth, want.plainHalfWidth, 1e-9)
  want.beta.forEach((value: number, q: number) => {
    expectRelative(got.beta[q], value, 1e-9)
  })
  expectRelative(got.estimate, want.estimate, 1e-9)
  expectRelative(got.residualVariance, want.residualVariance, 1e-9)
  expectRelative(got.standardError, want.se, 1e-9)
  expectRelative(got.halfWidth, want.halfWidth, 1e-9)
})

test.each(readCases('controls', 'refused'))('$id refused: $expect.status', ({ input }) => {
  const controls = input.C.map((values: number[]) => ({ name: 'draws', values, mean: input.mu[0] }))
  expect(() => controlVariate(input.Y, controls)).toThrow('The control "draws" does not vary')
})
