/** Which way a carrier goes out of a zone or the store. (MODEL.md §3 "Way out", §4) */
import { type PathSpec, STORE } from '@loopwright/line'
import { hasDutyAtArrival } from './duties.ts'
import { type Carrier, isExitClear, pathsOut, type World, waysOutDiffer } from './world.ts'

/** the conditions other than the one on rejected products */
function restHolds(w: World, { takes }: PathSpec, { product }: Carrier): boolean {
  if (takes.variants !== null && (product === null || !takes.variants.includes(product.variant))) return false
  if (takes.load !== null && (takes.load === 'loaded') !== (product !== null)) return false
  return takes.forStation === null || hasDutyAtArrival(w, takes.forStation, product)
}

function hasConditions({ takes }: PathSpec): boolean {
  return takes.variants !== null || takes.load !== null || takes.rejected !== null || takes.forStation !== null
}

/** The paths among which the zone's `divert` decides, by index; empty: no way out. */
export function waysLeft(w: World, carrier: Carrier, place: number): number[] {
  const out = pathsOut(w.spec, place)
  const at = (path: number): PathSpec => w.spec.paths[path]!
  const isRejected = carrier.product?.rejected === true
  if (isRejected) {
    // "a rejected product takes it and no other carrier does"
    const forRejected = out.filter((path) => at(path).takes.rejected === true && restHolds(w, at(path), carrier))
    if (forRejected.length > 0) return forRejected
  }
  // "Of the other paths whose conditions all hold, those with conditions go before those without."
  const open = out.filter((path) => {
    const { rejected } = at(path).takes
    return rejected !== true && !(rejected === false && isRejected) && restHolds(w, at(path), carrier)
  })
  const conditional = open.filter((path) => hasConditions(at(path)))
  return conditional.length > 0 ? conditional : open
}

/** `free`, and the store: "by the first path that can start" */
function takesTheFirstThatCan(w: World, place: number): boolean {
  return place === STORE || w.spec.zones[place]!.divert === 'free'
}

/** "the lowest path index whose next zone is `free`, else the lowest"; the store is always free */
function lowestFree(w: World, ways: readonly number[]): number | null {
  const free = ways.find((path) => {
    const { to } = w.spec.paths[path]!
    return to === STORE || w.zones[to]!.state === 'free'
  })
  return free ?? ways[0] ?? null
}

/** The one way that the divert gives now: of `free` the lowest whose next zone is free, else the lowest; null: no way out. */
export function wayByDivert(w: World, carrier: Carrier, place: number): number | null {
  const fixed = carrier.fixedWays.get(place)
  if (fixed !== undefined) return fixed
  const ways = waysLeft(w, carrier, place)
  if (ways.length === 0) return null
  if (takesTheFirstThatCan(w, place)) return lowestFree(w, ways)
  if (w.spec.zones[place]!.divert === 'alternate') return ways[(w.startsOut.get(place) ?? 0) % ways.length]! // "the k-th start out of the zone takes them in turn"
  return ways[0]!
}

export function wayOutAtStart(w: World, carrier: number): number | null {
  return wayByDivert(w, w.carriers[carrier]!, w.carriers[carrier]!.place)
}

/** "with `free` it is fixed once": at a transfer whose ways out need different positions; an exit-clear one has it from the claim */
export function isFixedOnce(w: World, place: number): boolean {
  return place !== STORE && w.spec.zones[place]!.divert === 'free' && waysOutDiffer(w.spec, place)
}

/** The ways that the carrier may try to start on, the first that can start first. */
export function waysToTry(w: World, carrier: Carrier): number[] {
  const { place } = carrier
  const fixed = carrier.fixedWays.get(place)
  if (fixed !== undefined) return [fixed]
  if (isFixedOnce(w, place)) return []
  if (takesTheFirstThatCan(w, place)) return waysLeft(w, carrier, place)
  const way = wayByDivert(w, carrier, place)
  return way === null ? [] : [way]
}

/**
 * The zones that a move on this path must find free, the next one first, and the ways out that the claim fixes; null: it cannot be claimed, for there is no way on.
 * "a carrier claims the transfer only when the zone after it is free, and claims both … If the zone after it is such a transfer too, the zone after that is claimed with them, and so on."
 */
export function chainOf(w: World, carrier: Carrier, path: number): { zones: number[]; ways: Map<number, number> } | null {
  const ways = new Map<number, number>()
  const zones: number[] = []
  let next = w.spec.paths[path]!.to
  while (next !== STORE) {
    if (zones.includes(next)) return null
    zones.push(next)
    if (!isExitClear(w.spec, next)) break
    const way = wayByDivert(w, carrier, next)
    if (way === null) return null
    ways.set(next, way)
    next = w.spec.paths[way]!.to
  }
  return { zones, ways }
}
