import { expect, test } from 'vitest'
import { binomialCdf } from '../special/binomialCdf.ts'
import { binomialEstimate } from './binomialEstimate.ts'

test('its status', () => {
  expect(binomialEstimate(3, 19).status).toBe('few')
  expect(binomialEstimate(19, 20).status).toBe('ok')
  expect(binomialEstimate(20, 20)).toMatchObject({ status: 'every one', high: 1 })
  expect(binomialEstimate(0, 20)).toMatchObject({ status: 'none', low: 0 })
  expect(binomialEstimate(0, 20).high).toBeCloseTo(1 - binomialEstimate(20, 20).low, 14)
})

test('each limit is the chance at which so many, or so few, have probability α/2', () => {
  const { low, high } = binomialEstimate(87, 100)
  expect(1 - binomialCdf(86, 100, low)).toBeCloseTo(0.025, 11)
  expect(binomialCdf(87, 100, high)).toBeCloseTo(0.025, 11)
})

test('it covers every true chance at least as often as it says', () => {
  const estimates = Array.from({ length: 31 }, (_, x) => binomialEstimate(x, 30))
  for (let p = 0.01; p < 1; p += 0.01) {
    let covered = 0
    for (let x = 0; x <= 30; x++) {
      const mass = binomialCdf(x, 30, p) - binomialCdf(x - 1, 30, p)
      if (estimates[x]!.low <= p && p <= estimates[x]!.high) covered += mass
    }
    expect(covered).toBeGreaterThanOrEqual(0.95 - 1e-9)
  }
})

test('refused', () => {
  expect(() => binomialEstimate(0, 0)).toThrow('Cannot give a chance from 0 replications')
  expect(() => binomialEstimate(5, 4)).toThrow('The number of successes is 5: it must lie in 0 … 4.')
  expect(() => binomialEstimate(1.5, 4)).toThrow(expect.objectContaining({ code: 'E_DOMAIN' }))
  expect(() => binomialEstimate(1, 2.5)).toThrow('The number of replications is 2.5')
})
