/** The document of `loopwright losses --json`. */
import type { LossResult } from '@loopwright/study'
import { differenceSchema } from './compareDocument.ts'
import { scenarioHead, scenarioSchema, type Source, studyHead } from './head.ts'
import { count, documentSchema, list, orNull, outputInterval, record, type Schema, text, words } from './schemaParts.ts'
import { formHead } from './form.ts'

export function lossDocument(source: Source, { kind, ...rest }: LossResult): object {
  return { ...formHead(kind), scenario: scenarioHead(source), ...rest }
}

/** JSON Schema of that document. */
export function lossSchema(): Schema {
  return documentSchema(
    'A loss waterfall of loopwright',
    record(
      {
        ...studyHead('losses'),
        scenario: scenarioSchema(),
        carriers: count('number of carriers'),
        bestCarriers: count('the best number, by a pilot'),
        gridlocks: count('replications in which the line as it stands stood still for good'),
        outOfProducts: count('replications in which it ran out of products'),
        forecast: orNull(outputInterval('output per window of the line as it stands, units')),
        ideal: orNull(outputInterval('output per window without any of the causes, units')),
        gap: orNull(differenceSchema('ideal less forecast, units per window')),
        causes: list(
          record(
            {
              kind: words(
                [
                  'stop',
                  'safety stops',
                  'breaks',
                  'operators',
                  'supply',
                  'receiver',
                  'exchange',
                  'spread of times',
                  'products',
                  'carriers',
                ],
                'what is taken out',
              ),
              name: text('in words'),
              step: differenceSchema('units gained after all causes before it; these sum to the gap'),
              alone: differenceSchema('units gained by this cause alone'),
            },
            'one cause',
          ),
          'in the order in which they are taken out',
        ),
        interaction: orNull(differenceSchema('gap less the sum of what each cause brings alone')),
      },
      'What `loopwright losses --json` prints. Units per window.',
    ),
  )
}
