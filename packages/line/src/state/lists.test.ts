import { expect, test } from 'vitest'
import { addTo, clearList, makeWorkList, takeAt } from './lists.ts'

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
