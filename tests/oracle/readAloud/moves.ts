/** When a carrier is done, and whether its move can start. (MODEL.md §3, §4) */
import { STORE } from '@loopwright/line'
import { dutyAhead, hasDutyAtArrival } from './duties.ts'
import { endsAreHeld, pathIsHeld, stationIn } from './held.ts'
import { chainOf, isFixedOnce, wayByDivert, waysLeft, waysToTry } from './wayOut.ts'
import { type Carrier, type Move, positionIn, type World, waysInDiffer } from './world.ts'

/** At rest with all work and release behind it; a transfer change may still be ahead. */
export function workIsBehind(w: World, carrier: Carrier): boolean {
  if (!carrier.atRest || carrier.work !== null || carrier.release !== 'over') return false
  const station = stationIn(w, carrier.place)
  return station === null || dutyAhead(w, station, carrier) === null
}

/** what the zone's transfer must stand at for the way out of the carrier in it; null: no transfer, no way out, or not fixed yet */
export function positionForWayOut(w: World, carrier: Carrier): 'low' | 'high' | null {
  const { place } = carrier
  if (place === STORE || w.zones[place]!.position === null) return null
  const [way] = waysToTry(w, carrier)
  return way === undefined ? null : w.spec.paths[way]!.fromPosition
}

/** the zone stands at `wanted`; null: nothing is wanted */
function stands(w: World, place: number, wanted: 'low' | 'high' | null): boolean {
  if (place === STORE) return true
  const { position, change } = w.zones[place]!
  return change === null && (wanted === null || position === null || position === wanted)
}

/** after the zone is clear: it stands as its way in needs, or rests where it is */
export function standsAsWayInNeeds(w: World, zone: number): boolean {
  return stands(w, zone, waysInDiffer(w.spec, zone) ? null : positionIn(w.spec, zone))
}

/** "nothing is left to do there: no duty, no release delay, no transfer change" */
export function isDone(w: World, carrier: Carrier): boolean {
  if (!workIsBehind(w, carrier) || !stands(w, carrier.place, positionForWayOut(w, carrier))) return false
  return !isToBeFixed(w, carrier)
}

/** its way out is to be fixed once all that ends now has ended */
function isToBeFixed(w: World, carrier: Carrier): boolean {
  return (
    workIsBehind(w, carrier) &&
    isFixedOnce(w, carrier.place) &&
    !carrier.fixedWays.has(carrier.place) &&
    waysLeft(w, carrier, carrier.place).length > 0
  )
}

/** "it is fixed once, when the carrier's work is done and all that ends at that instant has ended" */
export function fixWays(w: World): void {
  for (const carrier of w.carriers)
    if (isToBeFixed(w, carrier)) carrier.fixedWays.set(carrier.place, wayByDivert(w, carrier, carrier.place)!)
}

/** "A zone with work to do, a position change, a manual path ahead, no way out, or the store, always stops the carrier" that comes on this path. (§3) */
export function alwaysStops(w: World, carrier: Carrier, path: number): boolean {
  const { to, toPosition } = w.spec.paths[path]!
  if (to === STORE) return true
  const station = stationIn(w, to)
  if (station !== null && hasDutyAtArrival(w, station, carrier.product)) return true
  if (isFixedOnce(w, to) && !carrier.fixedWays.has(to)) return true
  const way = wayByDivert(w, carrier, to)
  if (way === null) return true
  if (w.zones[to]!.position !== null && w.spec.paths[way]!.fromPosition !== toPosition) return true
  return w.spec.paths[way]!.manual !== null
}

/** the move by which this carrier is now at the end of its way at speed; null: it is not looking */
export function lookingMove(w: World, carrierIndex: number): Move | null {
  return w.moves.find((move) => move.carrier === carrierIndex && move.stage === 'looking') ?? null
}

/** "Carriers leave it in the order they came (at time 0: lower number first)"; of arrivals at one instant the lower number first */
function isFirstInStore(w: World, carrierIndex: number): boolean {
  const { waitsSince } = w.carriers[carrierIndex]!
  return w.carriers.every((other, index) => {
    if (index === carrierIndex || other.place !== STORE || !other.atRest) return true
    return waitsSince! < other.waitsSince! || (waitsSince === other.waitsSince && carrierIndex < index)
  })
}

/** the zones that the move must find free; empty: the next zone is the store, or set aside for the carrier; null: there is no way on */
function zonesToClaim(w: World, carrierIndex: number, path: number): number[] | null {
  const { to } = w.spec.paths[path]!
  if (to === STORE || isSetAsideFor(w, to, carrierIndex)) return []
  return chainOf(w, w.carriers[carrierIndex]!, path)?.zones ?? null
}

function isSetAsideFor(w: World, place: number, carrierIndex: number): boolean {
  return place !== STORE && w.zones[place]!.state === 'claimed' && w.zones[place]!.carrier === carrierIndex
}

/** done, first in its queue, nothing held, and what it must claim is free */
function mayClaim(w: World, carrierIndex: number, path: number, asIfNoStops: boolean): boolean {
  const carrier = w.carriers[carrierIndex]!
  if (carrier.waitsSince === null || (!asIfNoStops && endsAreHeld(w, path))) return false
  if (carrier.place === STORE && !isFirstInStore(w, carrierIndex)) return false
  const zones = zonesToClaim(w, carrierIndex, path)
  return zones?.every((zone) => w.zones[zone]!.state === 'free') ?? false
}

/** the transfer in the next zone stands as the path needs */
function standsForPath(w: World, path: number): boolean {
  const { to, toPosition } = w.spec.paths[path]!
  return stands(w, to, to !== STORE && w.zones[to]!.position !== null ? toPosition : null)
}

/** "j is free (or set aside for it), and no stop holds i, j or the path" */
function couldStartOn(w: World, carrierIndex: number, path: number, asIfNoStops: boolean): boolean {
  return mayClaim(w, carrierIndex, path, asIfNoStops) && standsForPath(w, path)
}

/** "a carrier at rest that wins it in the wrong position makes it `claimed`" */
function couldWin(w: World, carrierIndex: number, path: number, asIfNoStops: boolean): boolean {
  const { to } = w.spec.paths[path]!
  if (to === STORE || !w.carriers[carrierIndex]!.atRest || w.zones[to]!.state !== 'free') return false
  return mayClaim(w, carrierIndex, path, asIfNoStops) && !standsForPath(w, path)
}

function isManual(w: World, path: number): boolean {
  return w.spec.paths[path]!.manual !== null
}

/** somebody has been sent to push or pull this carrier */
function hasPusher(w: World, carrierIndex: number): boolean {
  return w.operators.some(({ task }) => task?.kind === 'path' && task.carrier === carrierIndex)
}

/** the way by hand on which the carrier could start "but for the operator", and for which nobody has been sent; null: none */
export function manualWayThatCouldStart(w: World, carrierIndex: number, asIfNoStops: boolean): number | null {
  const carrier = w.carriers[carrierIndex]!
  if (!carrier.atRest || carrier.waitsSince === null || hasPusher(w, carrierIndex)) return null
  // the next transfer may stand in the wrong position: it turns while the operator walks
  const way = waysToTry(w, carrier).find((path) => mayClaim(w, carrierIndex, path, asIfNoStops))
  return way !== undefined && isManual(w, way) ? way : null
}

export interface Offer {
  readonly carrier: number
  readonly path: number
  /** only the transfer's position is in the way */
  readonly wins: boolean
}

/** The start that the carrier could make now: its one next path, with `free` the first that can start; null: none. */
export function offerOf(w: World, carrierIndex: number, asIfNoStops: boolean): Offer | null {
  const carrier = w.carriers[carrierIndex]!
  if (carrier.waitsSince === null) return null
  const there = w.operators.some(({ task, walkLeft }) => task?.kind === 'path' && task.carrier === carrierIndex && walkLeft === null)
  const ways = waysToTry(w, carrier).filter((path) => carrier.atRest || !isManual(w, path))
  for (const path of ways) {
    const starts = couldStartOn(w, carrierIndex, path, asIfNoStops)
    // That a transfer must turn first does not make a way less free: the lower path index goes before. A way by hand for which nobody is there cannot start.
    if (!starts && !couldWin(w, carrierIndex, path, asIfNoStops)) continue
    if (!isManual(w, path)) return { carrier: carrierIndex, path, wins: !starts }
    if (starts && there && (asIfNoStops || !pathIsHeld(w, path))) return { carrier: carrierIndex, path, wins: false }
  }
  return null
}

/** The next zone, and what lies behind it as far as exit-clear transfers go, is set aside for the carrier; its ways are fixed. */
export function claim(w: World, carrierIndex: number, path: number): void {
  const carrier = w.carriers[carrierIndex]!
  const { to } = w.spec.paths[path]!
  carrier.fixedWays.set(carrier.place, path)
  if (to === STORE || isSetAsideFor(w, to, carrierIndex)) return
  const { zones, ways } = chainOf(w, carrier, path)!
  for (const zone of zones) {
    w.zones[zone]!.state = 'claimed'
    w.zones[zone]!.carrier = carrierIndex
  }
  for (const [zone, way] of ways) carrier.fixedWays.set(zone, way)
}
