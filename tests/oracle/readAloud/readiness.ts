/** What a station's next duty waits for before it waits for people. (MODEL.md §5, §8) */
import { dutyAhead } from './duties.ts'
import type { Duty } from './eventLog.ts'
import { productIsThere, receiverIsReady } from './goods.ts'
import { stationIsHeld } from './held.ts'
import type { Carrier, World } from './world.ts'

/** the carrier at rest in the station's zone */
export function carrierAt(w: World, station: number): Carrier | null {
  const zone = w.zones[w.spec.stations[station]!.zone]!
  return zone.state === 'occupied' ? w.carriers[zone.carrier!]! : null
}

/** the duty for which the carrier at the station waits */
export function dutyWaiting(w: World, station: number): Duty | null {
  const carrier = carrierAt(w, station)
  if (carrier === null || carrier.work !== null) return null
  return dutyAhead(w, station, carrier)
}

export function waitsForProduct(w: World, station: number): boolean {
  return dutyWaiting(w, station) === 'load' && !w.setAside[station]
}

export function waitsForReceiver(w: World, station: number): boolean {
  const receiver = w.receivers[station]!
  return dutyWaiting(w, station) === 'unload' && receiver !== null && !receiver.setAside
}

/** there is a duty ahead, and its product or place is set aside if it needs one */
export function isReady(w: World, station: number): boolean {
  return dutyWaiting(w, station) !== null && !waitsForProduct(w, station) && !waitsForReceiver(w, station)
}

export function productMayBeSetAside(w: World, station: number, asIfNoStops: boolean): boolean {
  return waitsForProduct(w, station) && (asIfNoStops || !stationIsHeld(w, station)) && productIsThere(w, station)
}

export function placeMayBeSetAside(w: World, station: number, asIfNoStops: boolean): boolean {
  return waitsForReceiver(w, station) && (asIfNoStops || !stationIsHeld(w, station)) && receiverIsReady(w, station)
}
