import { expect, test } from 'vitest'
import { LevelledOrder, levelledOrder } from './levelled.ts'

test('after one whole cycle each share is met exactly, and it begins anew', () => {
  const order = levelledOrder([5, 2, 7, 1], 30)
  expect(order.slice(0, 15)).toEqual(order.slice(15))
  expect([0, 1, 2, 3].map((variant) => order.slice(0, 15).filter((one) => one === variant).length)).toEqual([5, 2, 7, 1])
})

test('shares and the whole numbers they stand for give one order', () => {
  expect(levelledOrder([0.2, 0.3, 0.5], 20)).toEqual(levelledOrder([2, 3, 5], 20))
})

test('no variant is more than one ahead', () => {
  for (const weights of [
    [1, 30, 30, 1, 3],
    [1, 1, 1, 50],
    [13, 7, 5, 3, 2, 1],
  ]) {
    const order = new LevelledOrder(weights)
    const total = weights.reduce((sum, weight) => sum + weight, 0)
    for (let k = 1; k <= 2 * total; k++) {
      order.next()
      weights.forEach((weight, i) => void expect(order.given[i]! - (k * weight) / total).toBeLessThanOrEqual(1))
    }
    expect(order.largestDeviation).toBeLessThan(2)
  }
})
