/** The states of MODEL.md §11, from scratch, for an instant at which nothing more happens. */
import type { CarrierState, StationState, ZoneState } from '@loopwright/line'
import { safetyCause } from '../../../packages/line/src/telling/stopSources.ts'
import {
  breakHoldsStation,
  breakHoldsZones,
  safetyStopsOnZone,
  sourcesOnStation,
  sourcesOnZone,
  stationIsHeld,
  zoneIsHeld,
} from './held.ts'
import { mustBeCalled, operatorsAreThere } from './people.ts'
import { carrierAt, isReady, waitsForProduct, waitsForReceiver } from './readiness.ts'
import type { Carrier, World } from './world.ts'

/** work or release has begun and not ended, held or not */
function isWorkedOn(carrier: Carrier): boolean {
  return carrier.work !== null || typeof carrier.release !== 'string'
}

/** work or release goes on at this very time */
function workRuns(w: World, station: number): boolean {
  const carrier = carrierAt(w, station)
  return carrier !== null && isWorkedOn(carrier) && !stationIsHeld(w, station)
}

/** "push or pull on a path that names this station" */
function isHandling(w: World, station: number): boolean {
  return w.moves.some((move) => w.spec.paths[move.path]!.manual?.station === station && move.stage !== 'arrived')
}

/** exactly one, in the order of the page: break, stopped, then as listed */
export function stationState(w: World, station: number): StationState {
  const zoneIndex = w.spec.stations[station]!.zone
  const zone = w.zones[zoneIndex]!
  if (breakHoldsStation(w, station)) return 'break'
  if (stationIsHeld(w, station) || (zoneIsHeld(w, zoneIndex) && !workRuns(w, station))) return 'stopped'
  if (workRuns(w, station)) return 'working'
  if (isHandling(w, station)) return 'handling'
  if (isReady(w, station) && mustBeCalled(w, station) && !operatorsAreThere(w, station)) return 'waiting for operator'
  if (waitsForProduct(w, station)) return 'waiting for product'
  if (waitsForReceiver(w, station)) return 'waiting for receiver'
  const carrier = carrierAt(w, station)
  if (carrier !== null && carrier.waitsSince !== null) return 'blocked'
  // a carrier on its way in or has the zone set aside, or is on its way out; transfer changes included
  if (zone.state !== 'free') return 'exchanging'
  return 'starved'
}

/**
 * The names of all that holds the station while it is in `stopped` or `break`: where causes overlap each counts the whole time.
 * What holds its zone counts while no work or release is running.
 */
export function stationCauses(w: World, station: number): string[] {
  const zone = w.spec.stations[station]!.zone
  const sources = new Set(sourcesOnStation(w, station))
  if (!workRuns(w, station)) for (const source of sourcesOnZone(w, zone)) sources.add(source)
  const causes = [...sources].map((source) => w.spec.breakdowns[source]!.name)
  if (!workRuns(w, station)) causes.push(...safetyStopsOnZone(w, zone).map((other) => safetyCause(w.spec.stations[other]!.name)))
  if (breakHoldsStation(w, station) || (breakHoldsZones(w) && !workRuns(w, station))) causes.push('break')
  return causes
}

export function zoneState(w: World, index: number): ZoneState {
  if (zoneIsHeld(w, index)) return 'stopped'
  const zone = w.zones[index]!
  if (zone.state !== 'occupied') return zone.state
  const carrier = w.carriers[zone.carrier!]!
  if (isWorkedOn(carrier)) return 'working'
  return carrier.waitsSince !== null ? 'blocked' : 'other'
}

export function zoneCauses(w: World, zone: number): string[] {
  const causes = sourcesOnZone(w, zone).map((source) => w.spec.breakdowns[source]!.name)
  causes.push(...safetyStopsOnZone(w, zone).map((station) => safetyCause(w.spec.stations[station]!.name)))
  if (breakHoldsZones(w)) causes.push('break')
  return causes
}

export function carrierState(carrier: Carrier): CarrierState {
  if (!carrier.atRest) return 'moving' // braking included
  if (isWorkedOn(carrier)) return 'worked on'
  return carrier.product === null ? 'waiting empty' : 'waiting with product'
}
