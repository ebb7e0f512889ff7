/** The document of `loopwright run --replications 2` and more: means and intervals over runs. */
import { STATION_STATES } from '@loopwright/line'
import type { RunsResult } from '@loopwright/study'
import { countSchema } from './countDocument.ts'
import { chanceFlag, headSchema, lawDocument, lawSchema, runsHead, type Source } from './head.ts'
import { byName, list, orNull, outputInterval, record, type Schema, text } from './schemaParts.ts'

export function runsDocument(source: Source, result: RunsResult): object {
  const { count, intervals } = result
  return {
    ...runsHead(source, result),
    law: lawDocument(result.law, source.scenario.line),
    count,
    intervals,
  }
}

export const runsFields = (): Record<string, Schema> => ({
  ...headSchema('runs', 'asked for'),
  chance: chanceFlag(),
  law: lawSchema(),
  count: countSchema(),
  intervals: orNull(
    record(
      {
        outputPerHour: outputInterval('output per clock hour'),
        lapSeconds: orNull(outputInterval('lap of a carrier, seconds')),
        timeInLineSeconds: orNull(outputInterval('from load start to unload end, seconds')),
        productsInLine: outputInterval('products on the loop'),
        stations: list(
          record(
            {
              name: text('of the station'),
              shares: byName(STATION_STATES, outputInterval('share of the window'), 'share of the window in each state'),
            },
            'one station',
          ),
          'stations',
        ),
        zones: list(record({ name: text('of the zone'), occupancy: outputInterval('carriers in it') }, 'one zone'), 'zones'),
      },
      'means over runs with their intervals; null below 2 runs',
    ),
  ),
})
