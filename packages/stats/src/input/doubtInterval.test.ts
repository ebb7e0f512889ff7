import { expect, test } from 'vitest'
import { Tally } from '../accumulate/tally.ts'
import { stream } from '../random/stream.ts'
import { binomialCdf } from '../special/binomialCdf.ts'
import { chiSquareQuantile } from '../special/gammaQuantile.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { tQuantile } from '../special/tQuantile.ts'
import { doubtInterval, inputParts } from './doubtInterval.ts'
import { varianceSplit } from './varianceSplit.ts'

test('one measured mean, runs that do not vary: the interval of Student (1908)', () => {
  const { halfWidth, freedom } = doubtInterval([7, 7], [{ variance: 4, freedom: 9 }], null, 0.9)
  expect([freedom, halfWidth]).toEqual([expect.closeTo(9, 12), expect.closeTo(2 * tQuantile(0.95, 9), 12)])
})

test('two measured means: degrees of freedom and half-width of SciPy 1.17.1, ttest_ind(equal_var=False)', () => {
  const parts = [
    [27.5, 21, 19, 23.6, 17, 17.9, 16.9, 20.1, 21.9, 22.6, 23.1, 19.6],
    [27.1, 22, 20.8, 23.4, 23.4, 23.5, 25.8],
  ].map((values) => ({ variance: Tally.of(values).variance! / values.length, freedom: values.length - 1 }))
  const { halfWidth, freedom } = doubtInterval([0, 0], parts, null, 0.9)
  expect([freedom, halfWidth]).toEqual([expect.closeTo(16.330240699516377, 9), expect.closeTo(2.1035685801998616, 9)])
})

test('inputs known exactly leave the interval of the runs; nothing that varies leaves none', () => {
  expect(doubtInterval([10, 12, 14], [], null, 0.9).halfWidth).toBeCloseTo((tQuantile(0.95, 2) * 2) / Math.sqrt(3), 12)
  expect(doubtInterval([5, 5], [], null, 0.9)).toEqual({ mean: 5, level: 0.9, halfWidth: 0, low: 5, high: 5, freedom: null })
  expect(doubtInterval([5, 5], [{ variance: 1, freedom: null }], null, 0.9).halfWidth).toBeCloseTo(normalQuantile(0.95), 12)
})

test('what Student’s t spreads more than the mean is taken off; doubt that no line explains is shared out', () => {
  expect(
    inputParts({ inputVariance: 10 }, [
      { variance: 0, freedom: null },
      { variance: 0, freedom: 4 },
    ]),
  ).toEqual([
    { variance: 5, freedom: null },
    { variance: 2.5, freedom: 4 },
  ])
})

test('of 2,000 means of 5 measured values, redrawn by t, 90 of 100 intervals cover the truth', () => {
  // a straight line of the input: exact but for what 40 redrawn lines tell of the variance. False alarm: 1 in 10,000; without the degrees of freedom (normal: 84 of 100) it fails
  const uniform = stream('doubt interval', 0, 'coverage')
  const n = 5
  const trials = 2000
  let covered = 0
  for (let trial = 0; trial < trials; trial++) {
    const values = Array.from({ length: n }, () => normalQuantile(uniform()))
    const tally = Tally.of(values)
    const redrawn = Array.from({ length: 40 }, () => {
      const t = normalQuantile(uniform()) / Math.sqrt(chiSquareQuantile(uniform(), n - 1) / (n - 1))
      return [(t * tally.sd!) / Math.sqrt(n)]
    })
    const split = varianceSplit(redrawn.map(([one]) => [one!, one!]))
    const { low, high } = doubtInterval([tally.mean!, tally.mean!], inputParts(split, [{ variance: 1, freedom: n - 1 }]), split, 0.9)
    if (low <= 0 && high >= 0) covered++
  }
  const below = binomialCdf(covered, trials, 0.9)
  expect(Math.min(below, 1 - below), `${covered} of ${trials}`).toBeGreaterThan(0.00005)
})

test('refused', () => {
  expect(() => doubtInterval([1], [], null, 0.9)).toThrow('1 run')
  expect(() => doubtInterval([1, 2], [], null, 1)).toThrow(expect.objectContaining({ code: 'E_DOMAIN' }))
})
