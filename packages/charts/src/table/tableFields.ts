/** Columns of files for what has more than one number. */
import type { FieldOf } from './table.ts'

interface Interval {
  readonly mean: number
  readonly low: number
  readonly high: number
}

/**
 * A mean and the limits of its interval: `<name>_mean`, `<name>_low`, `<name>_high`.
 *
 * @param says  what the mean is of, and its unit
 * @param of    null: not known
 * @example meanFields('units', 'units per shift', () => ({ mean: 3, low: 2, high: 4 })).map(([name, , value]) => [name, value({}, 0)]) // => [['units_mean', 3], ['units_low', 2], ['units_high', 4]]
 */
export function meanFields<R>(name: string, says: string, of: (row: R) => Interval | null | undefined): FieldOf<R>[] {
  return [
    [`${name}_mean`, `mean of ${says}`, (row) => of(row)?.mean ?? null],
    [`${name}_low`, `lower limit of the interval of the mean of ${says}`, (row) => of(row)?.low ?? null],
    [`${name}_high`, `upper limit of the interval of the mean of ${says}`, (row) => of(row)?.high ?? null],
  ]
}

/**
 * A name for a column of a file: small letters, digits and `_`.
 *
 * @example fieldName('waiting for operator') // => 'waiting_for_operator'
 */
export function fieldName(words: string): string {
  return words
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^_+|_+$/g, '')
}
