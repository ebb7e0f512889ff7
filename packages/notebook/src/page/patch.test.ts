import fc from 'fast-check'
import { expect, test } from 'vitest'
import { difference, patched } from './patch.ts'

test('any JSON value becomes any other by their difference', () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (base, other) => {
      const before = JSON.stringify(base)
      expect(patched(base, difference(base, other))).toEqual(other)
      expect(JSON.stringify(base)).toBe(before)
    }),
    { seed: 20, numRuns: 500 },
  )
})

test('like containers differ only where they differ', () => {
  const base = { rows: [{ share: 0.1, name: 'S1' }, { share: 0.2, name: 'S2' }], width: 3 }
  const other = { rows: [{ share: 0.1, name: 'S1' }, { share: 0.9, name: 'S2' }], width: 3 }
  expect(difference(base, other)).toEqual({ in: { rows: { in: { 1: { in: { share: { to: 0.9 } } } } } } })
  expect(difference(base, structuredClone(base))).toBeNull()
})

test('lists of other length are replaced whole', () => {
  expect(difference([1], [1, 2])).toEqual({ to: [1, 2] })
  expect(difference([], {})).toEqual({ to: {} })
})
