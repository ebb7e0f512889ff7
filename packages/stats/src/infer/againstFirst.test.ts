import { expect, test } from 'vitest'
import { againstFirst } from './againstFirst.ts'
import { allPairs } from './allPairs.ts'
import { pairedDifference } from './pairedDifference.ts'

const a = [10, 12, 11, 13]
const b = [11, 12, 13, 13]
const c = [9, 12, 10, 11]

test('each less the first, at a level that holds for all together', () => {
  expect(againstFirst([a, b, c], 0.94)).toEqual([
    { first: 1, second: 0, difference: pairedDifference(b, a, 1 - 0.06 / 2) },
    { first: 2, second: 0, difference: pairedDifference(c, a, 1 - 0.06 / 2) },
  ])
})

test('fewer pairs than all pairs, so narrower; two scenarios are the same either way', () => {
  const [near] = againstFirst([a, b, c])
  const [wide] = allPairs([a, b, c])
  expect(near!.difference.halfWidth).toBeLessThan(wide!.difference.halfWidth)
  expect(againstFirst([a, b])).toEqual(allPairs([a, b]))
})

test('any number of scenarios, but one', () => {
  expect(againstFirst(Array(40).fill(a))).toHaveLength(39)
  expect(() => againstFirst([a])).toThrow('Cannot give a comparison from 1 scenario')
})
