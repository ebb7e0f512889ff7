import { expect, test } from 'vitest'
import { RunningHash } from './hash.ts'

function hashOf(...values: number[]): string {
  const hash = new RunningHash()
  for (const value of values) hash.addNumber(value)
  return hash.digest()
}

test('the same numbers in the same order, and only those, give the same hash', () => {
  expect(hashOf(1, 2, 3)).toBe(hashOf(1, 2, 3))
  expect(hashOf(1, 2, 3)).not.toBe(hashOf(1, 3, 2))
  expect(hashOf(1, 2)).not.toBe(hashOf(1, 2, 0))
  expect(hashOf(0.1)).not.toBe(hashOf(0.1 + 2 ** -56))
  expect(hashOf()).toMatch(/^[0-9a-f]{16}$/)
})

test('ten thousand neighbouring numbers give ten thousand hashes', () => {
  expect(new Set(Array.from({ length: 10_000 }, (_, k) => hashOf(k / 2 ** 20))).size).toBe(10_000)
})

test('reset forgets', () => {
  const hash = new RunningHash()
  hash.addInteger(7)
  hash.reset()
  expect(hash.digest()).toBe(new RunningHash().digest())
})
