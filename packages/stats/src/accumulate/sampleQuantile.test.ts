import { expect, test } from 'vitest'
import { sampleQuantile } from './sampleQuantile.ts'

test('the list given stays as it is', () => {
  const values = [3, 1, 2]
  expect([sampleQuantile(values, 0), sampleQuantile(values, 0.5), sampleQuantile(values, 1)]).toEqual([1, 2, 3])
  expect(values).toEqual([3, 1, 2])
  expect(sampleQuantile([5], 0.3)).toBe(5)
})

test('a quantile of nothing, or at no share, is refused', () => {
  expect(() => sampleQuantile([], 0.5)).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
  expect(() => sampleQuantile([1], 1.5)).toThrow('The share p is 1.5: it must lie in 0 … 1.')
  expect(() => sampleQuantile([1, Number.NaN], 0.5)).toThrow('holds NaN in row 2')
})
