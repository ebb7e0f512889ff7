import { expect, test } from 'vitest'
import { mostBehind } from './levelled.ts'

/** The first n variants of the order, and how far each was ahead of its share at most, units. */
function ordered(shares: readonly number[], n: number): { order: number[]; aheadMax: number } {
  const sum = shares.reduce((all, share) => all + share, 0)
  const given = shares.map(() => 0)
  let aheadMax = 0
  const order = Array.from({ length: n }, (_, place) => {
    const variant = mostBehind(shares, sum, given, place)
    given[variant]!++
    aheadMax = Math.max(aheadMax, ...shares.map((share, i) => given[i]! - ((place + 1) * share) / sum))
    return variant
  })
  return { order, aheadMax }
}

test('after one whole cycle each share is met exactly, and it begins anew', () => {
  const { order } = ordered([5, 2, 7, 1], 30)
  expect(order.slice(0, 15)).toEqual(order.slice(15))
  expect([0, 1, 2, 3].map((variant) => order.slice(0, 15).filter((one) => one === variant).length)).toEqual([5, 2, 7, 1])
})

test('a variant with share 0 never comes, wherever it stands in the list', () => {
  expect(new Set(ordered([0, 2, 0, 3, 0], 50).order)).toEqual(new Set([1, 3]))
})

test('no variant is more than one ahead', () => {
  for (const shares of [
    [1, 30, 30, 1, 3],
    [1, 1, 1, 50],
    [13, 7, 5, 3, 2, 1],
  ]) {
    const { aheadMax } = ordered(shares, 2 * shares.reduce((sum, share) => sum + share, 0))
    expect(aheadMax).toBeLessThanOrEqual(1)
  }
})
