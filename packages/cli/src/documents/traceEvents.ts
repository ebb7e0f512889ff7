/** The events of a run as people read them: names and words in place of numbers. */
import { type LineSpec, STORE, type StopSource, stopSources, TRACE_KINDS, type TraceKind } from '@loopwright/line'
import type { TraceEvent } from '@loopwright/notebook/trace'
import type { TraceColumns } from '@loopwright/study'

export type { TraceEvent }

/** Events whose place is a station, a source of stops, a supply; of all others it is a zone or a path. */
export const STATION_EVENTS: ReadonlySet<TraceKind> = new Set<TraceKind>([
  ...(['duty start', 'duty end', 'release start', 'release end', 'operator sent', 'operator there', 'operator free'] as const),
  ...(['receiver start', 'receiver end'] as const),
])
export const STOP_EVENTS: ReadonlySet<TraceKind> = new Set<TraceKind>(['stop begin', 'stop end', 'repair start'])
export const SUPPLY_EVENTS: ReadonlySet<TraceKind> = new Set<TraceKind>(['product arrival', 'turned away'])

/** All of them, or those from one place (included) to another. */
export function traceEvents(trace: TraceColumns, line: LineSpec, from = 0, to = trace.kinds.length): TraceEvent[] {
  const sources = stopSources(line)
  return Array.from({ length: to - from }, (_, k) => traceEvent(trace, from + k, line, sources))
}

function traceEvent(trace: TraceColumns, index: number, line: LineSpec, sources: readonly StopSource[]): TraceEvent {
  const event = TRACE_KINDS[trace.kinds[index]!]!
  const place = trace.places[index]!
  const carrier = trace.carriers[index]!
  return {
    seconds: trace.seconds[index]!,
    event,
    place: STOP_EVENTS.has(event) ? sources[place]!.name : placeName(event, place, line),
    to: event === 'move start' ? zoneName(line, line.paths[place]!.to) : null,
    carrier: carrier < 0 ? null : carrier,
    detail: event.startsWith('operator ')
      ? (line.operators[trace.details[index]!]?.name ?? 'its own operator')
      : detailWord(event, trace.details[index]!),
  }
}

function placeName(event: TraceKind, place: number, line: LineSpec): string | null {
  if (event === 'rest' && place === STORE) return 'store'
  if (place < 0) return null
  if (event === 'move start') return zoneName(line, line.paths[place]!.from)
  if (STATION_EVENTS.has(event)) return line.stations[place]!.name
  if (SUPPLY_EVENTS.has(event)) return supplyName(line, place)
  return line.zones[place]!.name
}

/** The supply of the line, or past it those of stations. */
function supplyName({ supply, stations }: LineSpec, place: number): string {
  return [supply, ...stations.flatMap((station) => station.supply ?? [])][place]!.name
}

const zoneName = (line: LineSpec, zone: number): string => (zone === STORE ? 'store' : line.zones[zone]!.name)

function detailWord(event: TraceKind, detail: number): string | number | null {
  switch (event) {
    case 'move start':
      return detail === 0 ? 'from rest' : 'at speed'
    case 'duty start':
    case 'duty end':
      return ['unload', 'load', 'work'][detail] ?? null
    case 'change start':
    case 'change end':
      return detail === 0 ? 'to the way out' : detail === 1 ? 'back' : 'to the way in'
    case 'load':
    case 'unload':
    case 'reject':
    case 'product arrival':
    case 'turned away':
      return detail
    default:
      return null
  }
}
