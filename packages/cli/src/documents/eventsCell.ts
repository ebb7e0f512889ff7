import { tableOf } from '@loopwright/charts/table'
import type { DataCell } from '@loopwright/notebook'
import type { TraceEvent } from './traceEvents.ts'

const FIELDS: readonly (readonly [name: keyof TraceEvent, says: string])[] = [
  ['seconds', 'instant, seconds from the start of the run'],
  ['event', 'what happened'],
  ['place', 'zone, station, stop or supply; empty for breaks'],
  ['to', 'zone that a move leads to'],
  ['carrier', 'number of the carrier, from 0'],
  ['detail', 'duty, position, product or operator'],
]

/** Every event of a run as a file of a table. */
export function eventsCell(events: readonly TraceEvent[]): DataCell {
  const table = tableOf({
    caption: 'Events of the run',
    columns: FIELDS.map(([name, says]) => ({
      head: name,
      text: (event: TraceEvent) => String(event[name] ?? ''),
      data: [[name, says, (event: TraceEvent) => event[name]] as const],
    })),
    rows: events,
  })
  return { kind: 'data', id: 'events', table }
}
