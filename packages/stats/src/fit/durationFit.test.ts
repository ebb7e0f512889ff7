import { expect, test } from 'vitest'
import { distributionMean } from '../distributions/distributions.ts'
import { quantile } from '../distributions/samplerTable.ts'
import { FAMILIES, fitDuration, shiftFromData } from './durationFit.ts'

const times = [21.4, 19.8, 24.6, 20.3, 22.7, 18.9, 27.5, 20.9, 19.5, 23.1, 21.8, 25.9, 20.1, 18.6, 22.2, 30.4]

test('the distribution it gives has the mean of the data, near enough, and the shift at its start', () => {
  const mean = times.reduce((sum, value) => sum + value, 0) / times.length
  for (const family of FAMILIES) {
    const plain = fitDuration(times, family)
    expect(Math.abs(distributionMean(plain.distribution) / mean - 1)).toBeLessThan(0.02)
    const shifted = fitDuration(times, family, { from: 'given', seconds: 17 })
    expect(shifted.distribution).toMatchObject({ kind: 'limited', shift: 17, min: null, max: null })
    expect(quantile(shifted.distribution, 1e-9)).toBeGreaterThan(17)
  }
})

test('a shift from the data costs a parameter', () => {
  const fit = fitDuration(times, 'lognormal', { from: 'data' })
  expect(fit.shift).toBe(shiftFromData(times))
  expect(fit.aic).toBeCloseTo(6 - 2 * fit.logLikelihood, 12)
})

test('equal weights change nothing', () => {
  const weights = times.map(() => 1 / times.length)
  for (const family of FAMILIES) {
    const plain = fitDuration(times, family)
    const weighted = fitDuration(times, family, { from: 'given', seconds: 0 }, weights)
    expect(weighted.parameters[0] / plain.parameters[0]).toBeCloseTo(1, 10)
    expect(weighted.parameters[1] / plain.parameters[1]).toBeCloseTo(1, 10)
    expect(weighted.logLikelihood).toBeCloseTo(plain.logLikelihood, 9)
  }
})

test('too few values have no AICc', () => expect(fitDuration([3, 4, 5], 'gamma').aicc).toBeNull())

test('refused, with the row', () => {
  expect(() => fitDuration([3, 0, 4], 'gamma')).toThrow('Value 0 in row 2: a task time must be greater than 0.')
  expect(() => fitDuration(times, 'gamma', { from: 'given', seconds: 18.9 })).toThrow(
    'Value 18.9 in row 6: a task time must be greater than the shift 18.9.',
  )
  expect(() => fitDuration([4, 4, 4], 'weibull')).toThrow('All 3 values are 4: use a constant')
  expect(() => fitDuration(times, 'gamma', { from: 'given', seconds: -1 })).toThrow('The shift -1 is not a time')
  expect(() => fitDuration(times, 'gamma', { from: 'given', seconds: 0 }, [1])).toThrow(
    expect.objectContaining({ code: 'E_UNEQUAL_LENGTH' }),
  )
  expect(() => fitDuration([1], 'gamma')).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
  expect(() => shiftFromData([1, 9, 10])).toThrow('The data give no shift')
  expect(() => shiftFromData([4, 4, 4])).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
})
