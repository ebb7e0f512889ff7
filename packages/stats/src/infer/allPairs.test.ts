import { expect, test } from 'vitest'
import { allPairs } from './allPairs.ts'
import { pairedDifference } from './pairedDifference.ts'

const a = [10, 12, 11, 13]
const b = [11, 12, 13, 13]
const c = [9, 12, 10, 11]

test('each pair at a level that holds for all together', () => {
  const pairs = allPairs([a, b, c], 0.94)
  expect(pairs).toHaveLength(3)
  expect(pairs[2]).toEqual({ first: 2, second: 1, difference: pairedDifference(c, b, 1 - 0.06 / 3) })
})

test('two scenarios are one pair at its own level', () => {
  expect(allPairs([a, b])[0]!.difference).toEqual(pairedDifference(b, a, 0.95))
})

test('refused', () => {
  expect(() => allPairs([a])).toThrow('Cannot give a comparison from 1 scenario')
  expect(() => allPairs(Array(11).fill(a))).toThrow('11 scenarios have too many pairs for one table')
  expect(() => allPairs([a, [1, 2]])).toThrow(expect.objectContaining({ code: 'E_UNEQUAL_LENGTH' }))
})
