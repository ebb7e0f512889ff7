import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { batchMeans } from './batchMeans.ts'

const next = stream('7', 0, 'batches')

/** each value keeps a share of the one before */
function chain(n: number, kept: number): number[] {
  let x = 0
  return Array.from({ length: n }, () => {
    x = kept * x + normalQuantile(next())
    return 50 + x
  })
}

test('a long run of weak dependence gives an interval', () => {
  const result = batchMeans(chain(3000, 0.5))
  expect(result.status).toBe('ok')
  expect(result.candidates).toContain(result.chosen)
  expect(result.candidates.map((one) => one.batches)).toEqual([30, 25, 20, 15, 10])
})

test('a short run of strong dependence does not', () => {
  const result = batchMeans(Array.from({ length: 200 }, (_, i) => i))
  expect(result).toMatchObject({ status: 'batches depend on each other', chosen: null })
})

test('the interval of independent values encloses their mean in 95 of 100', () => {
  // 1,000 runs; the choice of the number of batches looks at the data, hence 0.04 = 5.8 standard errors
  let given = 0
  let count = 0
  for (let s = 0; s < 1000; s++) {
    const { chosen } = batchMeans(chain(150, 0))
    if (chosen === null) continue
    given++
    if (Math.abs(chosen.mean - 50) <= chosen.halfWidth) count++
  }
  expect(given).toBeGreaterThan(950)
  expect(Math.abs(count / given - 0.95)).toBeLessThan(0.04)
})

test('equal values have no width', () => {
  expect(batchMeans(Array(120).fill(7))).toMatchObject({
    status: 'no spread',
    chosen: { halfWidth: 0, dependence: null, pValue: null, mean: 7 },
  })
})

test('refused', () => expect(() => batchMeans(Array(99).fill(7))).toThrow('from 99 observations: give at least 100'))
