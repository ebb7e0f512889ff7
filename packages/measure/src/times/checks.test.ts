import { expect, test } from 'vitest'
import { onlyRises, peopleDiffer, roundingOf, trendOf } from './checks.ts'

/**
 * NIST/SEMATECH e-Handbook of Statistical Methods, StRD analysis of variance, data set SiRstv (from memory of the set, certified F 1.18046237440255):
 * resistance of silicon wafers by five instruments.
 */
const SIRSTV = [
  [196.3052, 196.124, 196.189, 196.2569, 196.3403],
  [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
  [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
  [196.2795, 196.1748, 196.1494, 196.1485, 195.9885],
  [196.2119, 196.1051, 196.185, 196.0052, 196.209],
]

test('the F test of a certified analysis of variance', () => {
  const names = SIRSTV.flatMap((row, index) => row.map(() => `i${index}`))
  // F of 1.18046 with 4 and 20 degrees of freedom is exceeded in 0.3494 (closed form: I_x(10, 2), x = 20/(20 + 4·1.18046))
  const x = 20 / (20 + 4 * 1.18046237440255)
  const closed = x ** 10 * (11 - 10 * x)
  expect(peopleDiffer(SIRSTV.flat(), names)!.p).toBeCloseTo(closed, 6)
})

/** NIST StRD linear regression, Norris: not of times; a line by hand instead: y = 2 + 3x with residuals 1, −1, −1, 1 at x = 0…3 has slope 3, and t² = F. */
test('a line and its test, by hand', () => {
  const values = [3, 4, 7, 12, 14]
  // Sxx 10, Sxy 30, slope 3; residuals 1, −1, −1, 1, 0 → rest 4, F = 90/(4/3) = 67.5
  const trend = trendOf(values)!
  expect([trend.slope, trend.change]).toEqual([3, 12])
  // p of t = 8.2158 with 3 degrees of freedom: 0.003773 (closed form of Student's t with 3 degrees)
  const t = Math.sqrt(67.5)
  const tail = 0.5 - (Math.atan(t / Math.sqrt(3)) + (t * Math.sqrt(3)) / (3 + t * t)) / Math.PI
  expect(trend.p).toBeCloseTo(2 * tail, 10)
  expect(trendOf([5, 5, 5, 5, 5])).toBeNull()
})

test('rounding to 5 s and more', () => {
  expect(roundingOf([45, 50, 55, 45, 40, 60, 50, 45])).toEqual({ step: 5, share: 1 })
  expect(roundingOf([30, 60, 30, 90, 60, 60, 30])).toEqual({ step: 30, share: 1 })
  expect(roundingOf([44, 51, 55, 46, 40, 61, 49, 45])).toBeNull()
  expect(roundingOf([44.2, 51.3, 55.8, 46.1])).toBeNull()
})

test('a watch that runs on', () => {
  expect(onlyRises([12, 57, 103, 148, 195, 240, 287, 331])).toBe(true)
  expect(onlyRises([45, 46, 44, 47, 45, 48, 44, 46])).toBe(false)
})

test('one person, or too few times of each', () => {
  expect(peopleDiffer([1, 2], ['A', 'A'])).toBeNull()
  expect(peopleDiffer([1, 2], ['A', 'B'])).toMatchObject({ p: null })
})
