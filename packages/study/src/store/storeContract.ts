/** What every store must do; one suite for all of them. For the tests of this package, no part of what is built. */
import { describe, expect, test } from 'vitest'
import type { Store } from './store.ts'

const bytes = (...values: number[]): Uint8Array => Uint8Array.from(values)
const KEY = 'ab'.repeat(32)

/** @param open  an empty store; `again` opens the same one a second time, as another process would */
export function storeContract(name: string, open: () => { store: Store; again: () => Store }): void {
  describe(`${name} keeps the contract of a store`, () => {
    test('nothing is known at first', () => {
      const { store } = open()
      expect(store.read(KEY)).toEqual([])
      expect(store.report).toEqual({ recalled: 0, kept: 0, damaged: 0, trouble: null })
    })

    test('what was written comes back as it was, in order, also to another process', () => {
      const { store, again } = open()
      store.write(KEY, { from: 12, to: 14, bytes: bytes(9, 10, 13, 0) })
      store.write(KEY, { from: 2, to: 3, bytes: bytes() })
      const all = [
        { from: 2, to: 3, bytes: bytes() },
        { from: 12, to: 14, bytes: bytes(9, 10, 13, 0) },
      ]
      expect(store.read(KEY)).toEqual(all)
      expect(store.report).toMatchObject({ kept: 3, recalled: 3, damaged: 0 })
      expect(again().read(KEY)).toEqual(all)
    })

    test('keys do not mix', () => {
      const { store } = open()
      const other = 'cd'.repeat(32)
      store.write(KEY, { from: 0, to: 1, bytes: bytes(1) })
      store.write(other, { from: 0, to: 1, bytes: bytes(2) })
      expect(store.read(KEY).map((entry) => [...entry.bytes])).toEqual([[1]])
      expect(store.read(other).map((entry) => [...entry.bytes])).toEqual([[2]])
    })

    test('writing a place again leaves one entry; two that overlap both stay', () => {
      const { store, again } = open()
      store.write(KEY, { from: 0, to: 2, bytes: bytes(1, 2) })
      again().write(KEY, { from: 0, to: 2, bytes: bytes(1, 2) })
      again().write(KEY, { from: 1, to: 3, bytes: bytes(2, 3) })
      expect(store.read(KEY).map(({ from, to }) => [from, to])).toEqual([
        [0, 2],
        [1, 3],
      ])
    })

    test('what is changed in the caller’s hands is not changed in the store', () => {
      const { store } = open()
      const mine = bytes(1, 2)
      store.write(KEY, { from: 0, to: 1, bytes: mine })
      mine[0] = 7
      store.read(KEY)[0]!.bytes[1] = 7
      expect([...store.read(KEY)[0]!.bytes]).toEqual([1, 2])
    })

    test('what is dropped is gone, and counted as damaged', () => {
      const { store, again } = open()
      store.write(KEY, { from: 0, to: 1, bytes: bytes(1) })
      store.drop(KEY, { from: 0, to: 1 })
      expect(again().read(KEY)).toEqual([])
      expect(store.report.damaged).toBe(1)
    })
  })
}
