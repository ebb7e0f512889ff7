import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { controlVariate } from './controlVariate.ts'

const next = stream('7', 0, 'controls')
const normal = (): number => normalQuantile(next())

test('it takes the luck of the draws out', () => {
  // 2,000 studies of 15: the interval encloses the mean in 95 of 100; ±0.024 is 4.9 standard errors, false alarm 1e-6
  let covered = 0
  let narrower = 0
  for (let s = 0; s < 2000; s++) {
    const draws = Array.from({ length: 15 }, () => 24 + normal())
    const output = draws.map((draw) => 150 - 6 * (draw - 24) + 2 * normal())
    const { estimate, halfWidth, plain, varianceShare } = controlVariate(output, [{ name: 'draws', values: draws, mean: 24 }])
    if (Math.abs(estimate - 150) <= halfWidth) covered++
    if (varianceShare < 0.9 && halfWidth < plain.halfWidth) narrower++
  }
  expect(Math.abs(covered / 2000 - 0.95)).toBeLessThan(0.024)
  expect(narrower).toBeGreaterThan(1990)
})

test('a control that has nothing to do with the output does not pay', () => {
  const output = [10, 12, 11, 14, 9, 13, 12, 10, 11, 12, 13]
  const idle = [1, 1, 2, 2, 1, 2, 1, 2, 2, 1, 1]
  expect(controlVariate(output, [{ name: 'idle', values: idle, mean: 1.5 }]).varianceShare).toBeGreaterThan(1)
})

test('an output that follows the control exactly has no width', () => {
  const draws = [1, 2, 3, 5]
  const got = controlVariate(
    draws.map((draw) => 10 - 2 * draw),
    [{ name: 'draws', values: draws, mean: 3 }],
  )
  expect(got.estimate).toBeCloseTo(4, 13)
  expect(got.halfWidth).toBeCloseTo(0, 12)
})

test('refused', () => {
  const y = [1, 2, 3, 4, 5, 6]
  const c = { name: 'draws', values: [2, 1, 4, 3, 6, 5], mean: 3 }
  expect(() => controlVariate(y, [])).toThrow('The number of controls is 0')
  expect(() => controlVariate(y, [c, c, c, c])).toThrow('The number of controls is 4')
  expect(() => controlVariate(y, [c, { ...c, name: 'twice', values: c.values.map((v) => 2 * v) }])).toThrow('move together')
  expect(() => controlVariate(y, [{ ...c, values: [1, 2] }])).toThrow('The output has 6 values and the control "draws" has 2')
  expect(() => controlVariate([1, 2, 3], [{ ...c, values: [1, 2, 1] }])).toThrow('from 3 replications: give at least 4')
  expect(() => controlVariate(y, [{ ...c, values: [5, 5, 5, 5, 5, 5] }])).toThrow('does not vary')
})

test('three controls that are orthogonal take out each its own part', () => {
  // a full factorial of three columns of ±1: the coefficients are those that it was made of, from the normal equations by hand
  const signs = [0, 1, 2, 3, 4, 5, 6, 7].map((k) => [1, 2, 4].map((bit) => ((k & bit) === 0 ? -1 : 1)))
  const output = signs.map(([a, b, c]) => 20 + 2 * a! - 3 * b! + 0.5 * c! + 0.1 * a! * b! * c!)
  const got = controlVariate(
    output,
    [0, 1, 2].map((i) => ({ name: `control ${i}`, values: signs.map((row) => row[i]!), mean: 0 })),
  )
  expect(got.beta.map((beta) => Number(beta.toFixed(12)))).toEqual([2, -3, 0.5])
  expect(got.estimate).toBeCloseTo(20, 12)
  expect(got.residualVariance).toBeCloseTo((8 * 0.01) / 4, 12)
})
