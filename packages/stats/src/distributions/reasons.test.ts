import { expect, test } from 'vitest'
import { belowZero, notAboveZero, notRising, notShare, notTriple, notValues } from './reasons.ts'

test('a value that will do has no reason against it', () => {
  expect([notAboveZero('a', 1), belowZero('a', 0), notShare('a', 1), notRising('a', 1, 'b', 2), notValues('a', [0])].flat()).toEqual([])
  expect(notTriple({ min: 1, mode: 1, max: 2 })).toEqual([])
})

test.each([undefined, null, Number.NaN, Infinity, -Infinity, '5', -1, {}])('%j will not do anywhere', (value) => {
  expect(notAboveZero('mean', value)[0]).toMatch(/^mean is .*; it must be above 0$/)
  expect(belowZero('min', value)[0]).toMatch(/^min is .*; it must be 0 or more$/)
  expect(notShare('p', value)[0]).toMatch(/^p is .*; it must lie in 0 … 1$/)
  expect(notValues('values', [1, value])[0]).toMatch(/^values holds .* in row 2; each must be 0 or more$/)
})

test('a triple tells all that is missing, then its order', () => {
  expect(notTriple({ min: -1, mode: Number.NaN, max: 5 })).toHaveLength(2)
  expect(notTriple({ min: 6, mode: 5, max: 5 })).toEqual(['min is 6 and max is 5; min must be below max'])
})
