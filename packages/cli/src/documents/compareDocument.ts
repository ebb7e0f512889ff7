/** The document of `loopwright compare --json`. */
import type { Difference } from '@loopwright/scenario'
import type { CompareResult } from '@loopwright/study/compare'
import { studyHead, windowSchema } from './head.ts'
import {
  chance,
  count,
  documentSchema,
  flag,
  list,
  number,
  orNull,
  outputInterval,
  record,
  type Schema,
  share,
  text,
  verdict,
  words,
} from './schemaParts.ts'
import { formHead } from './form.ts'

/** What was changed from the first line to another. */
export interface ChangedInputs {
  readonly file: string
  readonly variation: string | null
  readonly changed: readonly Difference[]
}

export function compareDocument(result: CompareResult, inputs: readonly ChangedInputs[]): object {
  const { kind, lines, pairs, ...rest } = result
  return {
    ...formHead(kind),
    ...rest,
    lines: lines.map((line, index) => ({ ...inputs[index]!, ...line })),
    pairs: pairs.map(({ first, second, difference }) => ({ first: lines[first]!.name, second: lines[second]!.name, difference })),
  }
}

export const differenceSchema = (of: string): Schema =>
  record(
    {
      n: count('pairs of replications'),
      mean: number(of),
      sd: number('of the differences, divisor n − 1'),
      level: share('confidence level of low … high'),
      halfWidth: number('half of the interval, Student t'),
      low: number('lower limit'),
      high: number('upper limit'),
      pairingGain: orNull(number('worth so many times the replications; null without spread')),
      status: words(
        ['difference shown', 'no difference shown', 'identical in every replication', 'always differs by the same'],
        'no difference shown is not "equal"',
      ),
    },
    of,
  )

/** JSON Schema of that document. */
export function compareSchema(): Schema {
  return documentSchema(
    'A comparison of loopwright',
    record(
      {
        ...studyHead('comparison'),
        level: share('of all differences together'),
        window: windowSchema(),
        lines: list(
          record(
            {
              file: text('scenario file, as given'),
              variation: orNull(text('named set of changed values, in the file or given by --set')),
              changed: list(
                record(
                  {
                    path: text('field path of the complete form; * stands for the places'),
                    places: list(text('name'), 'places with this same change'),
                    before: orNull(text('in the first line')),
                    after: orNull(text('in this line')),
                  },
                  'one input',
                ),
                'inputs that are not those of the first line',
              ),
              name: text('of the line'),
              carriers: count('number of carriers'),
              plan: orNull(number('units wanted per window')),
              units: list(number('units'), 'output per window, by replication'),
              chance: flag('false: nothing in the line is left to chance'),
              mean: orNull(outputInterval('output per window, units')),
              meetsPlan: orNull(chance('windows with at least the plan')),
              planVerdict: orNull(verdict('whether nine of ten windows meet the plan')),
              gridlocks: count('replications that ended in gridlock'),
              outOfProducts: count('replications that ended out of products'),
            },
            'one line',
          ),
          'in the order given',
        ),
        pairs: list(
          record(
            { first: text('name'), second: text('name'), difference: differenceSchema('first less second, units per window') },
            'one pair',
          ),
          'up to ten lines all pairs, else each with the first',
        ),
      },
      'What `loopwright compare --json` prints. Units per window, times in seconds, shares from 0 to 1.',
    ),
  )
}
