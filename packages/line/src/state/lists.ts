/** Sets and lists of whole numbers, as columns. */

/** No part: where an index could stand. */
export const NONE = -1

/** Lists of whole numbers by part: those of part k are `items[first[k]] … items[first[k + 1] − 1]`. */
export interface PartList {
  readonly first: Int32Array
  readonly items: Int32Array
}

/** A set of indices that remembers the order of nothing: add is idempotent, taking is by the caller's rule. */
export interface WorkList {
  readonly items: Int32Array
  readonly isIn: Uint8Array
  length: number
}

export function makeWorkList(capacity: number): WorkList {
  return { items: new Int32Array(capacity + 1), isIn: new Uint8Array(capacity), length: 0 }
}

/** Written behind the last entry in any case, and counted if it was not in: whether it was cannot be foreseen, and a branch that is guessed wrong costs more. */
export function addTo(list: WorkList, index: number): void {
  list.items[list.length] = index
  list.length += 1 - list.isIn[index]!
  list.isIn[index] = 1
}

/** Takes out the entry at `place`; the last one takes its place. */
export function takeAt(list: WorkList, place: number): void {
  list.isIn[list.items[place]!] = 0
  list.items[place] = list.items[--list.length]!
}

export function clearList(list: WorkList): void {
  list.isIn.fill(0)
  list.length = 0
}
