import {
  bootstrapTest,
  dirichletWeights,
  type Family,
  fences,
  fitDuration,
  goodness,
  lognormalTest,
  observationsNeeded,
  shiftFromData,
  varianceSplit,
  weightedMeanVariance,
} from '@loopwright/stats/fit'
import { describe, expect, test } from 'vitest'
import { ToyGenerator } from './toyGenerator.ts'
import { expectOfSize, expectRelative, readCases } from './vectors.ts'

describe('maximum likelihood', () => {
  const kinds = ['lognormal', 'gamma', 'weibull'].flatMap((family) => [family, `${family} with shift`])
  test.each(kinds.flatMap((kind) => readCases('fitting', kind)))('$id $kind of $input.set', ({ kind, input, expect: want }) => {
    const fit = fitDuration(input.data, kind.split(' ')[0] as Family, { from: 'given', seconds: input.shift })
    want.parameters.forEach((value: number, i: number) => {
      expectRelative(fit.parameters[i], value, 1e-9)
    })
    expectRelative(fit.logLikelihood, want.logLikelihood, 1e-9)
    expectRelative(fit.aic, want.aic, 1e-9)
    expectRelative(fit.aicc, want.aicc, 1e-9)
    const distance = goodness(input.data, fit)
    expectRelative(distance.largestDifference, want.ksD, 1e-9)
    expectOfSize(distance.andersonDarling, want.adA2, 1e-9)
  })
  test.each(readCases('fitting', 'shift from data'))('$id shift of $input.set', ({ input, expect: want }) => {
    expectRelative(shiftFromData(input.data), want.shift, 1e-9)
  })
  test.each(readCases('fitting', 'refused'))('$id refused: $expect.status', ({ input, expect: want }) => {
    expect(() => fitDuration(input.data, input.family, { from: 'given', seconds: input.shift })).toThrow(`in row ${want.row}:`)
  })
})

describe('does the fit hold', () => {
  test.each(readCases('fit-tests', 'parametric bootstrap, lognormal'))('$id bootstrap of $input.set', ({ input, expect: want }) => {
    const toy = new ToyGenerator(input.seed)
    const got = bootstrapTest(input.data, fitDuration(input.data, 'lognormal'), () => toy.u(), input.B)
    expectRelative(got.goodness.largestDifference, want.D, 1e-9)
    expectOfSize(got.goodness.andersonDarling, want.A2, 1e-9)
    expect([got.exceedLargestDifference, got.exceedAndersonDarling]).toEqual([want.exceedD, want.exceedA2])
    expectRelative(got.pLargestDifference, want.pD, 1e-9)
    expectRelative(got.pAndersonDarling, want.pA2, 1e-9)
  })
  test.each(readCases('fit-tests', 'closed form, lognormal'))('$id closed form, $input.set', ({ input, expect: want }) => {
    const got = lognormalTest(input.data)
    expectOfSize(got.andersonDarling, want.A2, 1e-9)
    expectOfSize(got.modified, want.modified, 1e-9)
    expectRelative(got.pValue, want.p, 1e-9)
  })
  test.each(readCases('fit-tests', 'outlier fences'))('$id fences of $input.set', ({ input, expect: want }) => {
    const got = fences(input.data)
    for (const name of ['q1', 'q3', 'low', 'high'] as const) expectRelative(got[name], want[name], 1e-9)
    expect(got.flaggedRows.map((row) => input.data[row - 1])).toEqual(want.flagged)
  })
  test.each(readCases('fit-tests', 'observations needed'))('$id observations needed, $input.set', ({ input, expect: want }) => {
    expect(observationsNeeded(input.data, input.relative, input.level)).toBe(want.n)
  })
})

describe('input uncertainty', () => {
  test.each(readCases('input-uncertainty', 'bayesian bootstrap'))('$id weights of $input.set', ({ input, expect: want }) => {
    const toy = new ToyGenerator(input.seed)
    const weights = dirichletWeights(input.data.length, () => toy.u())
    want.weightsFirst3.forEach((value: number, i: number) => {
      expectRelative(weights[i], value, 1e-9)
    })
    expectRelative(
      input.data.reduce((sum: number, value: number, i: number) => sum + weights[i]! * value, 0),
      want.weightedMean,
      1e-9,
    )
    for (const family of ['lognormal', 'gamma', 'weibull'] as const) {
      const { parameters } = fitDuration(input.data, family, { from: 'given', seconds: 0 }, weights)
      want[family].forEach((value: number, i: number) => {
        expectRelative(parameters[i], value, 1e-9)
      })
    }
  })
  test.each(readCases('input-uncertainty', 'split of variance'))('$id split of variance', ({ input, expect: want }) => {
    const got = varianceSplit(input.rows)
    expectRelative(got.grandMean, want.grandMean, 1e-9)
    expectRelative(got.meanSquareBetween, want.msb, 1e-9)
    expectRelative(got.meanSquareWithin, want.mse, 1e-9)
    expectRelative(got.inputVariance, want.inputVariance, 1e-9)
    expectRelative(got.grandMeanVariance, want.varianceOfGrandMean, 1e-9)
    expectRelative(got.inputShare, want.inputShare, 1e-9)
  })
  test.each(readCases('input-uncertainty', 'variance of the weighted mean (theory)'))(
    '$id variance of the weighted mean',
    ({ input, expect: want }) => {
      expectRelative(weightedMeanVariance(input.data), want.value, 1e-9)
    },
  )
})
