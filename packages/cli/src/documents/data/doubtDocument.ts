/** What the data do not know, in the document of a forecast. */
import type { OutputDoubt } from '@loopwright/notebook/data'
import type { DoubtedInput } from '@loopwright/measure'
import type { DoubtResult } from '@loopwright/study'
import type { Folder } from '../../dataFolder.ts'
import { accountSchema, fileDocument } from './accountDocument.ts'
import { count, list, number, orNull, record, type Schema, share, text, words } from '../schemaParts.ts'

/** A study of the doubt, and its inputs in the order of levels. */
export interface Doubted {
  readonly result: DoubtResult
  readonly inputs: readonly DoubtedInput[]
}

/** @param known  null: stopped too early */
export function doubtDocument({ result, inputs }: Doubted, known: OutputDoubt | null, { files }: Pick<Folder, 'files'>): object {
  const { draws, replications, without, within, split, variances } = result
  return {
    files: files.map(fileDocument),
    draws,
    replications,
    without,
    within,
    mean: known?.interval ?? null,
    meanIfExact: known?.exact ?? null,
    inputVariance: split?.inputVariance ?? null,
    inputShare: known?.share ?? null,
    inputs: inputs.map(({ name, n, what, freedom }, index) => ({
      name,
      n,
      what,
      freedom,
      variance: variances[index] ?? null,
      share: known?.inputs[index]?.share ?? null,
      narrowedHalfWidth: known?.inputs[index]?.narrowed ?? null,
    })),
  }
}

const interval = (of: string): Schema =>
  orNull(
    record(
      {
        mean: number('units, inputs as measured'),
        level: share('confidence level of low … high'),
        halfWidth: number('half of the interval, Student t'),
        low: number('lower limit of the mean'),
        high: number('upper limit of the mean'),
        freedom: orNull(number('degrees of freedom, by Welch and Satterthwaite; null: those of the normal, or nothing varies')),
      },
      `${of}; null: stopped too early`,
    ),
  )

export const doubtSchema = (): Schema =>
  orNull(
    record(
      {
        files: list(accountSchema(), 'tables of the folder'),
        draws: count('redrawn lines'),
        replications: count('windows of each'),
        without: list(number('units'), 'the line as measured: one for each world'),
        within: list(list(number('units'), 'by world'), 'redrawn lines, in the same worlds'),
        mean: interval('mean output, by the doubt of the inputs and the chance of the runs'),
        meanIfExact: interval('mean output, inputs taken as exact'),
        inputVariance: orNull(number('of the mean output of the redrawn lines; null: stopped too early')),
        inputShare: orNull(share('of the variance of single windows: what more measurements could take away')),
        inputs: list(
          record(
            {
              name: text('such as wire, small'),
              n: count('measurements'),
              what: words(['time', 'time between stops', 'repair', 'mix'], 'what is doubted'),
              freedom: orNull(number('degrees of freedom of Student t that its mean was redrawn by; null: in another way')),
              variance: orNull(number('that it adds to the mean output, by a straight line')),
              share: orNull(share('of the sum of these')),
              narrowedHalfWidth: orNull(number('half of the interval of the mean with 20 more measurements of it')),
            },
            'one input',
          ),
          'as they were measured',
        ),
      },
      'what the data of --data do not know; null: no data were given',
    ),
  )
