/**
 * From the columns of the collector to records by state: the one place where a state's place becomes its name. Each name is written out, since a record
 * made name by name in a loop takes many times as long.
 */
import type { ByCarrierState, ByStationState, ByZoneState } from './result.ts'

/** @param first  place of the first state, `working`; the others follow in the order of STATION_STATES */
export const stationSeconds = (column: Float64Array, first: number): ByStationState => ({
  working: column[first]!,
  handling: column[first + 1]!,
  'waiting for operator': column[first + 2]!,
  'waiting for product': column[first + 3]!,
  'waiting for receiver': column[first + 4]!,
  blocked: column[first + 5]!,
  exchanging: column[first + 6]!,
  starved: column[first + 7]!,
  stopped: column[first + 8]!,
  break: column[first + 9]!,
})

/** @param first  place of the first state, `free`; the others follow in the order of ZONE_STATES */
export const zoneSeconds = (column: Float64Array, first: number): ByZoneState => ({
  free: column[first]!,
  claimed: column[first + 1]!,
  working: column[first + 2]!,
  blocked: column[first + 3]!,
  other: column[first + 4]!,
  vacating: column[first + 5]!,
  stopped: column[first + 6]!,
})

/** @param first  place of the first state, `moving`; the others follow in the order of CARRIER_STATES */
export const carrierSeconds = (column: Float64Array, first: number): ByCarrierState => ({
  moving: column[first]!,
  'worked on': column[first + 1]!,
  'waiting with product': column[first + 2]!,
  'waiting empty': column[first + 3]!,
})
