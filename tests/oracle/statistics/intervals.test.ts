import { binomialEstimate, meanInterval, quantileEstimate } from '@loopwright/stats'
import { pairedDifference, whyNotPairable } from '@loopwright/stats/worlds'
import { describe, expect, test } from 'vitest'
import { predictionInterval } from '../../../packages/stats/src/infer/predictionInterval.ts'
import { quantileRanks } from '../../../packages/stats/src/infer/quantileEstimate.ts'
import { expectOfSize, expectRelative, readCases } from './vectors.ts'

describe('interval of the mean and prediction of further shifts', () => {
  test.each(readCases('intervals'))('$id', ({ input, expect: want }) => {
    const mean = meanInterval(input.data, input.level)
    const single = predictionInterval(input.data, input.level)
    expectRelative(mean.mean, want.mean, 1e-10)
    expectRelative(mean.sd, want.sd, 1e-10)
    expectRelative(mean.halfWidth, want.halfWidth, 1e-10)
    expectOfSize(mean.low, want.low, 1e-10)
    expectOfSize(mean.high, want.high, 1e-10)
    expectOfSize(single.low, want.predictionLow, 1e-10)
    expectOfSize(single.high, want.predictionHigh, 1e-10)
    expectRelative(predictionInterval(input.data, input.level, 5).halfWidth, want.predictionOf5Half, 1e-10)
    expectRelative(single.rangeCoverage, want.minMaxCoverage, 1e-10)
  })
})

describe('quantiles of shifts by order statistics', () => {
  test.each(readCases('quantiles', 'ranks'))('$id n $input.n, p $input.p', ({ input, expect: want }) => {
    const ranks = quantileRanks(input.n, input.p, input.level)
    expect([ranks.lower, ranks.upper]).toEqual([want.lower, want.upper])
    expectRelative(ranks.coverage, want.coverage, 1e-12)
  })
  test.each(readCases('quantiles', 'interval of data'))('$id p $input.p', ({ input, expect: want }) => {
    const got = quantileEstimate(input.data, input.p, input.level)
    expectRelative(got.point, want.point, 1e-12)
    expect([got.low, got.high]).toEqual([want.low, want.high])
  })
})

describe('chance to meet the plan', () => {
  test.each(readCases('proportion'))('$id $input.x of $input.n', ({ input, expect: want }) => {
    const got = binomialEstimate(input.x, input.n, input.level)
    expectRelative(got.share, want.point, 1e-10)
    expectRelative(got.low, want.low, 1e-10)
    expectRelative(got.high, want.high, 1e-10)
  })
})

describe('two scenarios in the same worlds', () => {
  const column = (data: readonly number[][], i: number): number[] => data.map((row) => row[i - 1]!)
  test.each(readCases('compare', 'one pair'))('$id', ({ input, expect: want }) => {
    const got = pairedDifference(column(input.data, input.i), column(input.data, input.l), input.level)
    expectOfSize(got.mean, want.mean, 1e-10)
    expectOfSize(got.sd ** 2, want.variance, 1e-10)
    expectOfSize(got.low, want.low, 1e-10)
    expectOfSize(got.high, want.high, 1e-10)
    expectOfSize(got.pairingGain, want.pairingGain, 1e-10)
  })
  test.each(readCases('compare', 'no spread in the difference'))('$id', ({ input, expect: want }) => {
    const got = pairedDifference(input.a, input.b)
    expect(got.mean).toBe(want.mean)
    expect(got.status).toBe('identical in every replication')
    expect(want.status).toBe('identical')
  })
  test('results of different runs are not paired', () => {
    const key = { seed: '42', replications: 9, warmupSeconds: 0, endSeconds: 60 }
    expect(whyNotPairable(key, key)).toBeNull()
    expect(whyNotPairable(key, { ...key, endSeconds: 61 })).toContain('windows (60 and 61)')
  })
})
