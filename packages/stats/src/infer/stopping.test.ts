import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { forecastReplications, stopAt, stoppingSentence } from './stopping.ts'

const next = stream('7', 0, 'stopping')
const values = Array.from({ length: 400 }, () => 100 + 10 * normalQuantile(next()))
const relative = { relative: 0.02, absolute: null }

test('the first n that is enough, however many ran ahead', () => {
  const full = stopAt(values, relative)
  expect(full.status).toBe('ok')
  expect(stopAt(values.slice(0, full.n), relative)).toEqual(full)
  expect(stopAt(values.slice(0, full.n - 1), relative)).toMatchObject({ status: 'more needed', n: full.n - 1 })
  expect(full.halfWidth).toBeLessThanOrEqual((0.02 / 1.02) * full.mean)
})

/**
 * Stopping at a precision looks at the data, so it may lean: it stops a little early where the spread happens to look small. For a symmetric output the mean does not lean;
 * for a skewed one it leans by less than the precision asked; and the interval encloses the mean somewhat less often than 95 of 100, never below 90.
 */
test.each([
  { what: 'symmetric', draw: (z: number) => 100 + 20 * z, mean: 100 },
  { what: 'skewed', draw: (z: number) => 100 * Math.exp(0.3 * z), mean: 100 * Math.exp(0.045) },
])('stopping leans by less than the precision asked: $what', ({ draw, mean }) => {
  const studies = 1000
  const step = stream('7', 1, 'stopping')
  let sum = 0
  let squares = 0
  let covered = 0
  for (let s = 0; s < studies; s++) {
    const list = Array.from({ length: 10 }, () => draw(normalQuantile(step())))
    let end = stopAt(list, { relative: 0.05, absolute: null })
    while (end.status === 'more needed') {
      list.push(draw(normalQuantile(step())))
      end = stopAt(list, { relative: 0.05, absolute: null })
    }
    sum += end.mean
    squares += (end.mean - mean) ** 2
    if (Math.abs(end.mean - mean) <= end.halfWidth) covered++
  }
  const lean = Math.abs(sum / studies - mean)
  // four standard errors on top of what is allowed: false alarm below 1e-4
  expect(lean).toBeLessThan(0.01 * mean + 4 * Math.sqrt(squares / studies / studies))
  expect(covered / studies).toBeGreaterThan(0.9)
})

test('either of two precisions is enough', () => {
  const both = stopAt(values, { relative: 0.001, absolute: 4 })
  expect(both.n).toBe(stopAt(values, { relative: null, absolute: 4 }).n)
})

test('equal values stop at once', () => {
  expect(stopAt(Array(10).fill(5), relative)).toMatchObject({ n: 10, halfWidth: 0, status: 'ok' })
})

test('what is said where it does not stop', () => {
  const late = stopAt(values, { relative: 0.001, absolute: null }, 10, 50)
  expect(late.status).toBe('precision not reached')
  expect(stoppingSentence(late)).toMatch(/^Precision not reached after 50 replications \(now \d\.\d %\)\.$/)
  const near = stopAt(
    values.map((value) => value - 100),
    relative,
    10,
    50,
  )
  expect(stoppingSentence(near)).toMatch(/is near zero; give an absolute half-width\.$/)
  expect(stoppingSentence(stopAt(values, relative))).toBeNull()
})

test('a forecast is the smallest number that would do', () => {
  const first = values.slice(0, 12)
  const n = forecastReplications(first, relative)
  expect(n).toBeGreaterThan(12)
  expect(forecastReplications(values, { relative: null, absolute: 1000 })).toBe(400)
  expect(() =>
    forecastReplications(
      first.map((value, i) => value - 100 + (i % 2)),
      { relative: 1e-6, absolute: null },
    ),
  ).toThrow('More than 10,000,000 replications')
})

test('refused', () => {
  expect(() => stopAt(values, { relative: null, absolute: null })).toThrow('No precision is asked for')
  expect(() => stopAt(values, { relative: 0, absolute: null })).toThrow('The relative precision is 0')
  expect(() => stopAt(values, { relative: null, absolute: -1 })).toThrow('The absolute half-width is -1')
  expect(() => stopAt(values.slice(0, 9), relative)).toThrow('from 9 replications: give at least 10')
  expect(() => stopAt(values, relative, 5)).toThrow('The first number of replications is 5')
  expect(() => stopAt(values, relative, 20, 19)).toThrow('The largest number of replications is 19')
})
