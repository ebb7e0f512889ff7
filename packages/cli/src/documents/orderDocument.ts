/** The document of `loopwright order --json`. */
import type { OrderResult } from '@loopwright/study'
import { differenceSchema } from './compareDocument.ts'
import { scenarioHead, scenarioSchema, type Source, studyHead } from './head.ts'
import {
  count,
  documentSchema,
  flag,
  list,
  map,
  number,
  orNull,
  outputInterval,
  record,
  type Schema,
  share,
  text,
  words,
} from './schemaParts.ts'
import { formHead } from './form.ts'

export function orderDocument(source: Source, result: OrderResult, replications: number): object {
  const { kind, candidates, choice, table, ...rest } = result
  const { line } = source.scenario
  const rows = new Map(table?.rows.map((row) => [row.system, row]))
  return {
    ...formHead(kind),
    scenario: scenarioHead(source),
    replications,
    ...rest,
    choice:
      choice === null
        ? null
        : { stage: choice.stage, replicationsMax: choice.replicationsMax, observations: choice.observations, status: choice.status },
    candidates: candidates.map(({ places, units, droppedAt }, index) => {
      const row = rows.get(index)
      return {
        zones: Object.fromEntries(line.stations.map(({ name }, station) => [name, line.zones[places[station]!]!.name])),
        units,
        droppedAt,
        best: row === undefined ? null : { mean: row.mean, low: row.low, high: row.high, maybeBest: row.maybeBest },
      }
    }),
  }
}

/** JSON Schema of that document. */
export function orderSchema(): Schema {
  return documentSchema(
    'A choice of station orders of loopwright',
    record(
      {
        ...studyHead('station order'),
        scenario: scenarioSchema(),
        alpha: share('chance of not choosing the best where it is better than every other by delta'),
        delta: number('smallest difference worth caring about, units per window, set before the runs'),
        firstStage: count('replications of every order'),
        exhaustive: flag('all orders that the rules allow are candidates'),
        searched: count('orders that short runs looked at; 0 where all are candidates'),
        today: count('place of today’s order in candidates'),
        mine: orNull(count('place of the order given by hand')),
        winner: orNull(count('place of the chosen one')),
        choice: orNull(
          record(
            {
              stage: count('replications at which it ended'),
              replicationsMax: count('no order can need more than one above it'),
              observations: count('replications over all orders'),
              status: words(['ok', 'decided at first stage'], 'how it ended'),
            },
            'the selection',
          ),
        ),
        gain: orNull(differenceSchema('chosen less today in fresh worlds, units per window; null: today is chosen')),
        mineGain: orNull(differenceSchema('given by hand less today in fresh worlds')),
        todayMean: orNull(outputInterval('today in fresh worlds, units per window')),
        candidates: list(
          record(
            {
              zones: map(text('zone'), 'zone of each station'),
              units: list(number('units'), 'output per window, by replication of the selection'),
              droppedAt: orNull(count('replications after which it was dropped; null: it stayed')),
              best: orNull(
                record(
                  {
                    mean: number('of the first stage'),
                    low: number('at most so much worse than the best of the others, 0 or below'),
                    high: number('at most so much better, 0 or above'),
                    maybeBest: flag('cannot be told from the best'),
                  },
                  'against the best of the others',
                ),
              ),
            },
            'one order',
          ),
          'today’s first, then the one given by hand',
        ),
      },
      'What `loopwright order --json` prints. Units per window.',
    ),
  )
}
