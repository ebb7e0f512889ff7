/** A duration as a file says it. */
import { type Distribution, distributionKinds, type FieldIs } from '@loopwright/stats'
import { Document } from 'yaml'
import { percentText } from '../text/decimal.ts'
import { phraseOf } from '../text/phrase.ts'
import { flag, flow, flowList, number, seconds, text, type Value } from './nodes.ts'

/**
 * A duration as a file says it, on one line.
 *
 * @example writeDistribution({ kind: 'lognormal', mean: 45, cv: 0.15 }) // => '45 s ± 15 %'
 */
export const writeDistribution = (d: Distribution): string => new Document(distribution(d)).toString({ lineWidth: 0 }).trim()

/** Where times stand that a scenario takes from a file. */
export interface ColumnOfFile {
  readonly file: string
  readonly column: string
  /** only rows that have this in the column named */
  readonly where: Readonly<Record<string, string>>
  readonly unit: 's' | 'min' | 'h' | 'ms'
}

/**
 * The values of a column of a CSV file, as a scenario file says it, on one line.
 *
 * @example writeColumn({ file: 'times.csv', column: 'seconds', where: { task: 'wire' }, unit: 's' }) // => '{ kind: empirical, file: "times.csv", column: "seconds", where: { "task": "wire" }, unit: s }'
 */
export function writeColumn({ file, column, where, unit }: ColumnOfFile): string {
  const rows = Object.entries(where).map(([head, text]) => `${JSON.stringify(head)}: ${JSON.stringify(text)}`)
  return `{ kind: empirical, file: ${JSON.stringify(file)}, column: ${JSON.stringify(column)}, where: { ${rows.join(', ')} }, unit: ${unit} }`
}

/** How a field is written, by what it is. */
const WRITTEN: { readonly [Is in FieldIs]: (part: never) => Value | null } = {
  value: seconds,
  positive: seconds,
  extra: seconds,
  limit: (part: number | null) => (part === null ? null : seconds(part)),
  values: (part: readonly number[]) => flowList(part.map(number)),
  share: (part: number) => text(percentText(part)),
  ratio: (part: number) => text(percentText(part)),
  number,
  numbers: (part: readonly number[]) => flowList(part.map(number)),
  flag,
  distribution,
}

/** A phrase where there is one, else the full form. */
export function distribution(d: Distribution): Value {
  const phrase = phraseOf(d)
  if (phrase !== null) return text(phrase)
  const { fields } = distributionKinds().find(({ kind }) => kind === d.kind)!
  const parts = Object.entries(fields).flatMap(([name, [is]]) => {
    const part = [name, WRITTEN[is](d[name as keyof Distribution] as never)] as const
    return is === 'values' ? [['unit', text('s')] as const, part] : [part]
  })
  return flow([['kind', text(d.kind)], ...parts])
}
