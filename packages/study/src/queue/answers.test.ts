import { expect, test } from 'vitest'
import { inBatches } from './answers.ts'

test('all in pieces that a server takes at once, in their order', () => {
  const all = Array.from({ length: 130 }, (_, k) => k)
  expect(inBatches(all).map(({ length }) => length)).toEqual([64, 64, 2])
  expect(inBatches(all).flat()).toEqual(all)
  expect(inBatches([])).toEqual([])
})
