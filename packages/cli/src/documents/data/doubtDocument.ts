/** What the data do not know, in the document of a forecast. */
import type { DoubtedInput } from '@loopwright/measure'
import type { DoubtResult } from '@loopwright/study'
import { count, list, number, orNull, record, type Schema, share, text, words } from '../schemaParts.ts'

/** A study of the doubt, and its inputs in the order of levels. */
export interface Doubted {
  readonly result: DoubtResult
  readonly inputs: readonly DoubtedInput[]
}

export function doubtDocument({ result, inputs }: Doubted): object {
  const { draws, replications, without, within, split, variances } = result
  return {
    draws,
    replications,
    without,
    within,
    inputVariance: split?.inputVariance ?? null,
    inputShare: split?.inputShare ?? null,
    inputs: inputs.map((input, index) => ({ ...input, variance: variances[index] ?? null })),
  }
}

export const doubtSchema = (): Schema =>
  orNull(
    record(
      {
        draws: count('redrawn lines'),
        replications: count('windows of each'),
        without: list(number('units'), 'the line as measured: one for each world'),
        within: list(list(number('units'), 'by world'), 'redrawn lines, in the same worlds'),
        inputVariance: orNull(number('of the mean output, by the doubt of the inputs; null: stopped too early')),
        inputShare: orNull(share('of what is uncertain: what more measurements could take away')),
        inputs: list(
          record(
            {
              name: text('such as wire, small'),
              n: count('measurements'),
              what: words(['time', 'time between stops', 'repair', 'mix'], 'what is doubted'),
              variance: orNull(number('that it adds to the mean output')),
            },
            'one input',
          ),
          'as they were measured',
        ),
      },
      'what the data of --data do not know; null: no data were given',
    ),
  )
