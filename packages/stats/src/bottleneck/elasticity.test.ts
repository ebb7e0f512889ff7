import { expect, test } from 'vitest'
import { elasticity, exchangeElasticity, limitingParts } from './elasticity.ts'

test('over everything that takes time they sum to 1, up to the second order of the step', () => {
  // one exchange of 2.5 + 20 + 1.5 s limits: scaling each part in turn
  const parts = [2.5, 20, 1.5]
  const rate = (scaled: number, by: number): number[] =>
    Array(2).fill(1 / parts.reduce((sum, part, i) => sum + (i === scaled ? by : 1) * part, 0))
  const sum = parts.reduce((all, _, i) => all + elasticity({ base: rate(i, 1), faster: rate(i, 0.95), slower: rate(i, 1.05) }).mean, 0)
  expect(Math.abs(sum - 1)).toBeLessThan(0.05 ** 2)
  expect(exchangeElasticity(24, 24, 0.05)).toBeCloseTo(1 / (1 - 0.0025), 14)
})

test('the largest is named, and all that cannot be told from it', () => {
  const of = (low: number, high: number) => ({
    n: 20,
    mean: (low + high) / 2,
    sd: 1,
    level: 0.95,
    halfWidth: (high - low) / 2,
    low,
    high,
    status: 'ok' as const,
  })
  expect(limitingParts([of(0, 0.1), of(0.7, 0.9), of(0.2, 0.3)])).toEqual([1])
  expect(limitingParts([of(0.6, 0.75), of(0.7, 0.9), of(0.2, 0.3)])).toEqual([1, 0])
})

test('refused', () => {
  const outputs = { base: [100, 90], faster: [101, 91], slower: [99, 89] }
  expect(() => elasticity({ ...outputs, base: [100, 0] })).toThrow('Replication 1 made 0')
  expect(() => elasticity({ ...outputs, faster: [100] })).toThrow('the faster runs has 1')
  expect(() => elasticity(outputs, 0)).toThrow('The step is 0')
  expect(() => exchangeElasticity(30, 24)).toThrow('the stay is a part of the exchange')
  expect(() => limitingParts([])).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
})
