/** Which events of a run are wanted: of some carriers, stations or zones, in a stretch of time. */
import { type LineSpec, stopSources, type StopSource } from '@loopwright/line'
import { nearest } from '@loopwright/scenario'
import { STATION_EVENTS, STOP_EVENTS, SUPPLY_EVENTS, type TraceEvent } from '../documents/traceEvents.ts'
import { Misuse } from '../shell/shell.ts'

export interface TraceChoice {
  /** numbers of carriers, from 0 */
  readonly carrier?: readonly string[]
  readonly station?: readonly string[]
  readonly zone?: readonly string[]
  /** seconds from time 0, both included */
  readonly from?: number
  readonly to?: number
}

/**
 * The rule by which events are kept. Names narrow: an event must be of one of the carriers, where some are named, and at one of the places, where
 * some are. A station stands for itself, its zone and its breakdowns.
 *
 * @throws Misuse  with a name that the line does not have, and the nearest that it has
 */
export function traceChoice(line: LineSpec, { carrier, station, zone, from, to }: TraceChoice): (event: TraceEvent) => boolean {
  if (from !== undefined && to !== undefined && from > to) throw new Misuse('--from lies after --to')
  const carriers = carrier?.map((name) => carrierNumber(name, line.carriers.count))
  const stations = (station ?? []).map((name) => known('station', name, names(line.stations)))
  const zones = (zone ?? []).map((name) => known('zone', name, names(line.zones)))
  const atStations = new Set(stations)
  const atZones = new Set([...zones, ...line.stations.filter(({ name }) => atStations.has(name)).map((one) => line.zones[one.zone]!.name)])
  const stops = new Set(stopSources(line).flatMap((source) => (touches(line, source, atStations, atZones) ? [source.name] : [])))
  const anywhere = station === undefined && zone === undefined
  return (event) => {
    if ((from !== undefined && event.seconds < from) || (to !== undefined && event.seconds > to)) return false
    if (carriers !== undefined && (event.carrier === null || !carriers.includes(event.carrier))) return false
    return anywhere || isAt(event, atStations, atZones, stops)
  }
}

function isAt(
  { event, place, to }: TraceEvent,
  stations: ReadonlySet<string>,
  zones: ReadonlySet<string>,
  stops: ReadonlySet<string>,
): boolean {
  if (place === null) return event === 'standstill'
  if (STOP_EVENTS.has(event)) return stops.has(place)
  if (STATION_EVENTS.has(event)) return stations.has(place)
  if (SUPPLY_EVENTS.has(event)) return false
  return zones.has(place) || (to !== null && zones.has(to))
}

function touches(line: LineSpec, source: StopSource, stations: ReadonlySet<string>, zones: ReadonlySet<string>): boolean {
  if (source.kind === 'safety stop') return zones.has(line.zones[line.stations[source.station]!.zone]!.name)
  const { part } = source.breakdown
  if (part.kind === 'station') return stations.has(line.stations[part.index]!.name)
  if (part.kind === 'section') return line.sections[part.index]!.zones.some((zone) => zones.has(line.zones[zone]!.name))
  return zones.has(line.zones[part.index]!.name)
}

const names = (parts: readonly { readonly name: string }[]): string[] => parts.map(({ name }) => name)

function carrierNumber(name: string, count: number): number {
  const number = /^\d+$/.test(name) ? Number(name) : count
  if (number >= count) throw new Misuse(`there is no carrier "${name}"; carriers are numbered 0 to ${count - 1}`)
  return number
}

function known(kind: string, name: string, all: readonly string[]): string {
  if (all.includes(name)) return name
  const near = nearest(name, all)
  throw new Misuse(`there is no ${kind} "${name}"; ${near === null ? `there are ${all.join(', ')}` : `did you mean ${near}?`}`)
}
