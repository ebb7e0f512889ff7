/** A work list from which the lowest index comes out first: a binary heap in its columns, for lists that may be long. */
import type { WorkList } from './lists.ts'

/** Adds the index if it is not in. */
export function addInOrder(list: WorkList, index: number): void {
  if (list.isIn[index] === 1) return
  list.isIn[index] = 1
  const { items } = list
  let at = list.length++
  while (at > 0) {
    const up = (at - 1) >> 1
    const parent = items[up]!
    if (parent < index) break
    items[at] = parent
    at = up
  }
  items[at] = index
}

/** Takes out the lowest; the list is not empty. */
export function takeLowest(list: WorkList): number {
  const { items } = list
  const lowest = items[0]!
  list.isIn[lowest] = 0
  const length = --list.length
  const last = items[length]!
  let at = 0
  for (let down = 1; down < length; down = 2 * at + 1) {
    if (down + 1 < length && items[down + 1]! < items[down]!) down++
    const child = items[down]!
    if (last < child) break
    items[at] = child
    at = down
  }
  items[at] = last
  return lowest
}
