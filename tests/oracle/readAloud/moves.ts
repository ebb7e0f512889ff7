/** When a carrier is done, and whether its move can start. (MODEL.md §3, §4) */
import { dutyAhead } from './duties.ts'
import { stationIn, zoneIsHeld } from './held.ts'
import { type Carrier, isExitClear, type Move, positionIn, positionOut, type World, zoneAfter } from './world.ts'

/** At rest with all work and release behind it; a transfer change may still be ahead. */
export function workIsBehind(w: World, carrier: Carrier): boolean {
  if (!carrier.atRest || carrier.work !== null || carrier.release !== 'over') return false
  const station = stationIn(w, carrier.zone)
  return station === null || dutyAhead(w.spec.stations[station]!, carrier) === null
}

/** the zone's transfer stands as its way out needs; true where there is no transfer */
export function standsAsWayOutNeeds(w: World, zone: number): boolean {
  const { position, change } = w.zones[zone]!
  return position === null || (change === null && position === positionOut(w.spec, zone))
}

export function standsAsWayInNeeds(w: World, zone: number): boolean {
  const { position, change } = w.zones[zone]!
  return position === null || (change === null && position === positionIn(w.spec, zone))
}

/** "nothing is left to do there: no duty, no release delay, no transfer change" */
export function isDone(w: World, carrier: Carrier): boolean {
  return workIsBehind(w, carrier) && standsAsWayOutNeeds(w, carrier.zone)
}

/** A zone with work to do or a position change always stops the carrier. (§3) */
export function alwaysStops(w: World, carrier: Carrier, zone: number): boolean {
  if (w.spec.zones[zone]!.transfer !== null && positionIn(w.spec, zone) !== positionOut(w.spec, zone)) return true
  const station = stationIn(w, zone)
  return station !== null && dutyAhead(w.spec.stations[station]!, { product: carrier.product, dutiesBehind: 0 }) !== null
}

/**
 * The zones that this carrier must find free to leave its zone, the next one first; empty where the next one is set aside for it.
 * "a carrier claims the transfer only when the zone after it is free, and claims both … If the zone after it is such a transfer too, the zone after that is claimed with them, and so on."
 */
export function zonesToClaim(w: World, carrierIndex: number): number[] {
  const next = zoneAfter(w.spec, w.carriers[carrierIndex]!.zone)
  if (w.zones[next]!.state === 'claimed' && w.zones[next]!.carrier === carrierIndex) return []
  const claims = [next]
  while (isExitClear(w.spec, claims[claims.length - 1]!) && claims.length <= w.spec.zones.length) {
    claims.push(zoneAfter(w.spec, claims[claims.length - 1]!))
  }
  return claims
}

/** the move by which this carrier is now at the end of its way at speed; null: it is not looking */
export function lookingMove(w: World, carrierIndex: number): Move | null {
  return w.moves.find((move) => move.carrier === carrierIndex && move.stage === 'looking') ?? null
}

/** "j is free (or set aside for it), and no stop holds i, j or the path" */
export function moveCanStart(w: World, carrierIndex: number, asIfNoStops = false): boolean {
  const carrier = w.carriers[carrierIndex]!
  if (carrier.waitsSince === null) return false
  if (!asIfNoStops && (zoneIsHeld(w, carrier.zone) || zoneIsHeld(w, zoneAfter(w.spec, carrier.zone)))) return false
  return zonesToClaim(w, carrierIndex).every((zone) => w.zones[zone]!.state === 'free')
}
