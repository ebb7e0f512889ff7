/** The document of `loopwright carriers --json`: full precision, the same bytes for any number of workers, with and without a store. */
import type { CarrierStudy } from '@loopwright/study'
import { countSchema } from './countDocument.ts'
import { chanceFlag, headSchema, lawDocument, lawSchema, runsHead, type Source } from './head.ts'
import { count, documentSchema, flag, list, number, orNull, planAnswer, record, type Schema, share, text, words } from './schemaParts.ts'
import { answerSchema } from './sweepDocument.ts'

export function carriersDocument(source: Source, study: CarrierStudy): object {
  const { answer, counts, law } = study
  const { pilot, looks, settled, flat, steps, planAnswer } = study
  return {
    ...runsHead(source, study),
    settled,
    answer,
    flat,
    planAnswer,
    steps,
    pilot,
    looks,
    law: lawDocument(law, source.scenario.line),
    counts,
  }
}

const differenceSchema = (): Schema =>
  record(
    {
      n: count('replications compared'),
      mean: number('units per window'),
      sd: number('standard deviation of the differences'),
      level: share('confidence of low … high'),
      halfWidth: number('half of the interval'),
      low: number('lower limit'),
      high: number('upper limit'),
      pairingGain: orNull(number('worth so many times the replications; null without spread')),
      status: words(
        ['difference shown', 'no difference shown', 'identical in every replication', 'always differs by the same'],
        'whether there is a difference',
      ),
    },
    'units with `to` less units with `from`, in the same worlds',
  )

/** JSON Schema of that document. */
export function carriersSchema(): Schema {
  return documentSchema(
    'A carrier study of loopwright',
    record(
      {
        ...headSchema('carrier study', 'per number of carriers in question, at the last look'),
        settled: flag('the answer is confirmed, and one fewer is too few, stood still, or cannot be'),
        chance: chanceFlag(),
        answer: answerSchema(),
        flat: orNull(record({ from: count('least carriers'), to: count('most carriers') }, 'counts that all pass the test of the answer')),
        planAnswer: planAnswer(),
        steps: list(
          record({ from: count('carriers'), to: count('one more'), difference: differenceSchema() }, 'what one carrier more brings'),
          'by carriers, ascending',
        ),
        pilot: record(
          {
            seed: text('names the random worlds of the pilot'),
            replications: count('per number of carriers'),
            counts: list(
              record({ carriers: count('number'), mean: number('units per window'), gridlocks: count('runs in gridlock') }, 'one'),
              'by carriers, ascending',
            ),
            reference: orNull(count('where the walk begins; null: stopped before it was known')),
            ruledOut: list(count('carriers'), 'so far below the reference that they were not tested'),
          },
          'runs that find where to begin',
        ),
        looks: list(
          record(
            {
              replications: count('per number of carriers in question'),
              alpha: share('chance of error spent on it'),
              chosen: orNull(count('carriers confirmed')),
              undecided: orNull(count('neither confirmed nor shown to fall short')),
            },
            'one look at the runs',
          ),
          'in order',
        ),
        law: lawSchema(),
        counts: list(countSchema(), 'by carriers, ascending'),
      },
      'What `loopwright carriers --json` prints. Times in seconds, rates per second, shares from 0 to 1.',
    ),
  )
}
