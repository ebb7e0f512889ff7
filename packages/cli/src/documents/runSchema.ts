/** JSON Schema of the documents of `loopwright run --json`: one run in full, or means over several. */
import { CARRIER_STATES, STATION_STATES, TRACE_KINDS, ZONE_STATES } from '@loopwright/line'
import { headSchema, lawSchema } from './head.ts'
import { runsFields } from './runsDocument.ts'
import { byName, count, documentSchema, list, number, orNull, record, type Schema, stops, tally, text, words } from './schemaParts.ts'

export function runSchema(): Schema {
  return documentSchema('Runs of loopwright', {
    description: 'What `loopwright run --json` prints: one run in full, or means over several. Times in seconds, shares from 0 to 1.',
    anyOf: [oneRun(), record(runsFields(), 'several runs, or a single one that was stopped')],
  })
}

const byState = (states: readonly string[]): Schema => byName(states, number('seconds'), 'seconds in each state; they sum to the window')

function oneRun(): Schema {
  const schema = record(
    {
      ...headSchema('run', 'always 1'),
      law: lawSchema(),
      replication: count('which of the random worlds of this seed'),
      end: record(
        {
          reason: words(['end of window', 'gridlock', 'out of products'], 'why the run ended'),
          atSeconds: orNull(number('instant at which the line stood still')),
          waits: list(record({ zone: text('name'), waitsFor: text('name') }, 'one pair'), 'who waits for whom'),
          cycle: list(text('name'), 'zones that wait for each other in a circle'),
          unmanned: list(text('name'), 'zones that wait for an operator who is not free'),
        },
        'how the run ended',
      ),
      loads: count('products loaded in the window'),
      output: count('products taken off in the window, rejected ones not counted'),
      rejections: count('rejections by inspections in the window'),
      rejectedTakenOff: count('rejected products taken off in the window'),
      outputPerHour: number('output per clock hour of the window'),
      outputByHour: list(count('units'), 'outputs in each hour of the window; the last may be a part of one'),
      outputSeconds: list(number('seconds from time 0'), 'instants of all outputs in the window'),
      lap: tally('time between two starts of one carrier out of the first unload station'),
      timeInLine: tally('from load start to unload end'),
      productsInLineMean: number('products on the loop, time average'),
      storeMean: number('carriers in the store, time average'),
      supplies: list(
        record(
          {
            name: text('of the supply'),
            arrivals: count('products that came in the window'),
            turnedAway: count('of these, those that found the queue full'),
            queueMean: number('products in the queue, time average'),
            queueMax: count('most at once'),
            waiting: tally('from arrival to the start of the load'),
          },
          'one supply',
        ),
        'supplies with arrivals',
      ),
      handlings: list(
        record(
          {
            operator: text('name of the operator, or of the station whose own operator it is'),
            count: count('pushes and pulls ended in the window'),
            seconds: number('their time, walking not counted'),
          },
          'one operator',
        ),
        'pushes and pulls',
      ),
      stations: list(
        record(
          {
            name: text('of the station'),
            title: text('what people call it'),
            zone: text('name of its zone'),
            seconds: byState(STATION_STATES),
            longestBlockSeconds: number('longest unbroken time blocked'),
            cycles: count('carriers let go after a duty'),
            stoppedBy: stops('stopped and break, by cause; causes that overlap each count whole'),
          },
          'one station',
        ),
        'stations',
      ),
      zones: list(
        record(
          {
            name: text('of the zone'),
            seconds: byState(ZONE_STATES),
            occupancyMean: number('carriers in it, time average'),
            movesOut: count('moves out of it'),
            stoppedBy: stops('stopped, by cause'),
          },
          'one zone',
        ),
        'zones',
      ),
      carriers: list(
        record({ carrier: count('its number'), laps: count('laps ended in the window'), seconds: byState(CARRIER_STATES) }, 'one carrier'),
        'carriers',
      ),
      breakdowns: list(
        record({ name: text('of the source'), count: count('stops begun in the window'), seconds: number('time down') }, 'one source'),
        'breakdown sources',
      ),
      safetyStops: list(
        record(
          { name: text('of the station'), count: count('stops begun in the window'), seconds: number('its section down, until the reset') },
          'one station',
        ),
        'safety stops',
      ),
      breaks: record({ count: count('breaks begun in the window'), seconds: number('their length within it') }, 'breaks'),
      events: count('moves, ends of work and so on, from time 0 on'),
      trace: list(
        record(
          {
            seconds: number('from time 0'),
            event: words(TRACE_KINDS, 'what happened'),
            place: orNull(text('zone (of a move: the one it leaves), station, breakdown source, safety stop or supply')),
            to: orNull(text('of a move: the zone it leads to, or "store"')),
            carrier: orNull(count('its number')),
            detail: {
              type: ['string', 'number', 'null'],
              description: 'how a move starts, which duty, which change, which serial number, which operator',
            },
          },
          'one event',
        ),
        'all events; only with --trace',
      ),
    },
    'one run',
  )
  return { ...schema, required: (schema.required as string[]).filter((name) => name !== 'trace') }
}
