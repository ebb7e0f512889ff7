/** The events of a run as people read them: names and words in place of numbers. */
import type { LineSpec, TraceKind } from '@loopwright/line'
import { STORE, TRACE_KINDS, type TraceColumns } from '@loopwright/study'

export interface TraceEvent {
  /** from time 0 */
  readonly seconds: number
  readonly event: TraceKind
  /** name of the zone (of a move: the zone it leaves), station or breakdown source; null for breaks and standstill */
  readonly place: string | null
  /** of a move: name of the zone it leads to, or `store`; else null */
  readonly to: string | null
  /** number of the carrier; null where there is none */
  readonly carrier: number | null
  /** `from rest`, `at speed`; the duty; `to the way out`, `back`, `to the way in`; the serial number; else null */
  readonly detail: string | number | null
}

const STATION_EVENTS: readonly TraceKind[] = ['duty start', 'duty end', 'release start', 'release end']
const STOP_EVENTS: readonly TraceKind[] = ['stop begin', 'stop end']

export function traceEvents(trace: TraceColumns, line: LineSpec): TraceEvent[] {
  return Array.from({ length: trace.kinds.length }, (_, index) => {
    const event = TRACE_KINDS[trace.kinds[index]!]!
    const carrier = trace.carriers[index]!
    return {
      seconds: trace.seconds[index]!,
      event,
      place: placeName(event, trace.places[index]!, line),
      to: event === 'move start' ? zoneName(line, line.paths[trace.places[index]!]!.to) : null,
      carrier: carrier < 0 ? null : carrier,
      detail: detailWord(event, trace.details[index]!),
    }
  })
}

function placeName(event: TraceKind, place: number, line: LineSpec): string | null {
  if (event === 'rest' && place === STORE) return 'store'
  if (place < 0) return null
  if (event === 'move start') return zoneName(line, line.paths[place]!.from)
  if (STATION_EVENTS.includes(event)) return line.stations[place]!.name
  if (STOP_EVENTS.includes(event)) return line.breakdowns[place]!.name
  return line.zones[place]!.name
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
      return detail
    default:
      return null
  }
}
