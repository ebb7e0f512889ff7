/** The document of `loopwright steady --json`. */
import type { SteadyResult } from '@loopwright/study'
import { scenarioHead, scenarioSchema, type Source, studyHead } from './head.ts'
import { count, documentSchema, list, number, orNull, outputInterval, record, type Schema, text, words } from './schemaParts.ts'
import { formHead } from './form.ts'

export function steadyDocument(source: Source, { kind, ...rest }: SteadyResult): object {
  return { ...formHead(kind), scenario: scenarioHead(source), partial: rest.status === 'stopped', ...rest }
}

const cut = (of: string): Schema =>
  record(
    {
      batches: count('of five intervals'),
      d: orNull(count('batches to delete')),
      curve: list(number('statistic'), 'by batches deleted, from 0'),
      delete: orNull(count('intervals to delete; null: no cut')),
      meanAfter: orNull(number('of the batches that stay')),
      status: words(['ok', 'too short', 'not converged', 'ended early'], 'whether there is a cut'),
    },
    of,
  )

/** JSON Schema of that document. */
export function steadySchema(): Schema {
  return documentSchema(
    'A search for the warm-up, by loopwright',
    record(
      {
        ...studyHead('steady state'),
        scenario: scenarioSchema(),
        status: words(['ok', 'not converged', 'ended early', 'stopped'], 'ok: there is a cut'),
        intervalSeconds: number('length of one interval'),
        intervals: count('of one run'),
        runSeconds: number('length of one run, from an empty line on, without breaks'),
        gridlocks: count('of these runs that ended in gridlock'),
        outOfProducts: count('of these runs that ended out of products'),
        cutSeconds: orNull(number('warm-up')),
        enoughSeconds: orNull(number('length of a run that would do')),
        outputPerHour: orNull(outputInterval('units per hour after the cut')),
        productsInLine: orNull(outputInterval('products on the loop after the cut')),
        output: orNull(cut('MSER-5 on output')),
        products: orNull(cut('MSER-5 on products in line')),
        series: orNull(
          record(
            {
              unitsPerHour: list(number('units per hour'), 'output of each interval'),
              products: list(number('products'), 'on the loop on average, in each interval'),
            },
            'means over the runs, from an empty line on; null where a run ended early or was stopped',
          ),
        ),
        why: orNull(text('why there is no cut')),
      },
      'What `loopwright steady --json` prints. Times in seconds.',
    ),
  )
}
