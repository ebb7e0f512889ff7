/** What `loopwright trace --json` prints: one JSON record a line (NDJSON), first a heading, then the events. */
import { TRACE_KINDS } from '@loopwright/line'
import { type Source, scenarioHead, scenarioSchema } from './head.ts'
import { count, documentSchema, number, orNull, record, type Schema, text, words } from './schemaParts.ts'
import { formHead, formHeadSchema } from './form.ts'

export interface TraceOf {
  readonly engineVersion: string
  readonly seed: string
  readonly replication: number
}

/** The first line. */
export function traceHead(source: Source, of: TraceOf): object {
  return { ...formHead('trace'), scenario: scenarioHead(source), ...of }
}

/** JSON Schema of one line. */
export function traceSchema(): Schema {
  return documentSchema('One line of the events of a run, by loopwright', {
    anyOf: [
      record(
        {
          ...formHeadSchema('trace'),
          scenario: scenarioSchema(),
          engineVersion: text('version of the engine'),
          seed: text('names the random worlds'),
          replication: count('which of them, from 0'),
        },
        'the first line',
      ),
      record(
        {
          seconds: number('from time 0'),
          event: words(TRACE_KINDS, 'what happened'),
          place: orNull(text('zone (of a move: the one it leaves), station or breakdown source; null for breaks and standstill')),
          to: orNull(text('of a move: the zone it leads to, or "store"')),
          carrier: orNull(count('number of the carrier')),
          detail: {
            type: ['string', 'number', 'null'],
            description: 'from rest, at speed; the duty; which way a transfer turns; a serial number',
          },
        },
        'every further line: one event, in order',
      ),
    ],
  })
}
