import { expect, test } from 'vitest'
import { addTo, CLEAR_KNOWN, CLEAR_NOW, CLEAR_TIMED, clearList, isClearOver, makeWorkList, takeAt } from './state.ts'

const members = (list: ReturnType<typeof makeWorkList>) => Array.from(list.items.subarray(0, list.length)).sort((a, b) => a - b)

test('a work list holds each index once, and gives it back from any place', () => {
  const list = makeWorkList(5)
  for (const index of [3, 1, 3, 4, 1]) addTo(list, index)
  expect(members(list)).toEqual([1, 3, 4])
  takeAt(list, list.items.indexOf(3))
  expect(members(list)).toEqual([1, 4])
  expect([...list.isIn]).toEqual([0, 1, 0, 0, 1])
  addTo(list, 3)
  expect(members(list)).toEqual([1, 3, 4])
  takeAt(list, list.length - 1)
  expect(list.length).toBe(2)
  clearList(list)
  expect([list.length, ...list.isIn]).toEqual([0, 0, 0, 0, 0, 0])
})

test('a clear is over unseen from its instant on, if it has no timer and has not been made good', () => {
  const line = {
    zoneClearing: Uint8Array.of(CLEAR_NOW, CLEAR_TIMED, CLEAR_KNOWN, CLEAR_KNOWN),
    clearAt: Float64Array.of(1, 1, 5, 6),
    now: 5,
  }
  expect([0, 1, 2, 3].map((zone) => isClearOver(line, zone))).toEqual([false, false, true, false])
})
