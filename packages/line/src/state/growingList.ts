/** A list of numbers that grows by doubling. */
export interface GrowingList {
  values: Float64Array
  length: number
}

/** Makes room for one more: `list.values[list.length++] = value` then fits. */
export function makeRoom(list: GrowingList): void {
  if (list.length < list.values.length) return
  const wider = new Float64Array(Math.max(16, 2 * list.length))
  wider.set(list.values)
  list.values = wider
}
