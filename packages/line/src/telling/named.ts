/** What a run tells of one station or zone, by name. */
import type { ByStationState, ByZoneState, RunResult, StationResult, ZoneResult } from './result.ts'

/** What a station did, and its times as shares of the window. */
export interface NamedStation extends StationResult {
  /** share of the window in each state, 0 … 1; they sum to 1 */
  readonly shares: ByStationState
}

/** What happened in a zone, and its times as shares of the window. */
export interface NamedZone extends ZoneResult {
  /** share of the window in each state, 0 … 1; they sum to 1 */
  readonly shares: ByZoneState
}

/**
 * A station of a run, by its name.
 *
 * @throws RangeError  if the run has no station of that name; it tells which there are
 * @example stationOf({ stations: [{ name: 'S1', seconds: { working: 30, blocked: 10 } }], window: { warmupSeconds: 0, endSeconds: 40 } }, 'S1').shares.blocked // => 0.25
 */
export function stationOf(run: RunResult, name: string): NamedStation {
  const station = find('station', run.stations, name)
  return { ...station, shares: sharesOf(station.seconds, run) }
}

/**
 * A zone of a run, by its name.
 *
 * @throws RangeError  if the run has no zone of that name; it tells which there are
 * @example zoneOf({ zones: [{ name: 'Z01', seconds: { free: 30, claimed: 10 } }], window: { warmupSeconds: 0, endSeconds: 40 } }, 'Z01').shares.free // => 0.75
 */
export function zoneOf(run: RunResult, name: string): NamedZone {
  const zone = find('zone', run.zones, name)
  return { ...zone, shares: sharesOf(zone.seconds, run) }
}

function find<T extends { readonly name: string }>(kind: string, parts: readonly T[], name: string): T {
  const found = parts.find((part) => part.name === name)
  if (found !== undefined) return found
  const known = parts.length === 0 ? 'it has none' : `there are ${parts.map((part) => `"${part.name}"`).join(', ')}`
  throw new RangeError(`the run has no ${kind} called "${name}"; ${known}`)
}

function sharesOf<S extends string>(seconds: Readonly<Record<S, number>>, { window }: RunResult): Record<S, number> {
  const whole = window.endSeconds - window.warmupSeconds
  return Object.fromEntries(Object.entries<number>(seconds).map(([state, spent]) => [state, spent / whole])) as Record<S, number>
}
