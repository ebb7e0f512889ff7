/** Rows and columns for the zones of any line: what is reached later stands lower, lanes beside each other. */

export interface MapPath {
  /** index of the zone; STORE (−1): the store */
  readonly from: number
  readonly to: number
  /** pushed or pulled by hand. Default: false */
  readonly manual?: boolean
  /** whom it takes, in a word: "rejected"; null: everybody. Default: null */
  readonly takes?: string | null
}

export interface Placed {
  /** row of each zone, 0 at the top */
  readonly row: readonly number[]
  /** lane of each zone, 0 at the left */
  readonly lane: readonly number[]
  readonly rows: number
  readonly lanes: number
}

/**
 * Rows by the longest way from a start, paths that lead back left out; lanes so that a way goes straight on where it can.
 *
 * @param zones   how many, ≥ 1
 * @param first   zone at the top where the line has no other start
 */
export function lineLayers(zones: number, paths: readonly MapPath[], first: number): Placed {
  const inner = paths.filter(({ from, to }) => from >= 0 && to >= 0)
  const next = (zone: number): number[] => inner.filter(({ from }) => from === zone).map(({ to }) => to)
  const entries = paths.filter(({ from, to }) => from < 0 && to >= 0).map(({ to }) => to)
  const fed = new Set(inner.map(({ to }) => to))
  const sources = Array.from({ length: zones }, (_, zone) => zone).filter((zone) => !fed.has(zone))
  const starts = [...new Set([...entries, ...sources, first, ...Array.from({ length: zones }, (_, zone) => zone)])]
  const { order, forward } = inTravelOrder(starts, next)
  const row = Array.from<number>({ length: zones }).fill(0)
  for (const zone of order) for (const to of forward(zone)) row[to] = Math.max(row[to]!, row[zone]! + 1)
  const lane = Array.from<number>({ length: zones }).fill(-1)
  const taken = new Set<string>()
  for (const zone of order) {
    const before = inner.filter(({ from, to }) => to === zone && lane[from]! >= 0 && row[from]! < row[zone]!).map(({ from }) => lane[from]!)
    let wanted = before.length === 0 ? 0 : Math.min(...before)
    while (taken.has(`${row[zone]} ${wanted}`)) wanted += 1
    lane[zone] = wanted
    taken.add(`${row[zone]} ${wanted}`)
  }
  return { row, lane, rows: Math.max(-1, ...row) + 1, lanes: Math.max(-1, ...lane) + 1 }
}

/** Zones so that each comes after those that lead to it, and the paths that lead on; a path that closes a circle is none of them. */
function inTravelOrder(
  starts: readonly number[],
  next: (zone: number) => number[],
): { order: number[]; forward: (zone: number) => readonly number[] } {
  const seen = new Map<number, 'open' | 'closed'>()
  const onwards = new Map<number, number[]>()
  const order: number[] = []
  // the way named first is followed last, so that it comes first in the order and keeps its lane
  const ahead = (zone: number): number[] => next(zone).reverse()
  for (const start of starts) {
    const stack = seen.has(start) ? [] : [{ zone: start, onTo: ahead(start), at: 0 }]
    if (stack.length > 0) seen.set(start, 'open')
    while (stack.length > 0) {
      const top = stack.at(-1)!
      if (top.at === top.onTo.length) {
        seen.set(top.zone, 'closed')
        order.unshift(top.zone)
        stack.pop()
        continue
      }
      const to = top.onTo[top.at]!
      top.at += 1
      if (seen.get(to) === 'open') continue
      onwards.set(top.zone, [...(onwards.get(top.zone) ?? []), to])
      if (seen.has(to)) continue
      seen.set(to, 'open')
      stack.push({ zone: to, onTo: ahead(to), at: 0 })
    }
  }
  return { order, forward: (zone) => onwards.get(zone) ?? [] }
}
