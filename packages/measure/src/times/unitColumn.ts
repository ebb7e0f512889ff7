/** A column that says the unit of each row's times. */
import type { Columns } from '../table/heads.ts'
import { EMPTY, type RawTable } from '../table/rawTable.ts'
import { timeUnit } from '../values/duration.ts'

const HEADS = ['unit', 'units', 'timeunit', 'einheit']

/**
 * The index of the column whose cells are all units of time; null: there is none. A column "unit" with other words in it tells variants.
 *
 * @param named  columns that the user gave a role stay what they are
 */
export function unitColumn(table: RawTable, { heads, bodyFrom }: Columns, named: readonly string[]): number | null {
  const column = heads.findIndex(({ plain, text }) => HEADS.includes(plain) && !named.includes(text))
  if (column < 0) return null
  const texts = table.rows
    .slice(bodyFrom)
    .map((row) => (row.cells[column] ?? EMPTY).text)
    .filter((text) => text !== '' && text !== heads[column]!.text)
  return texts.length > 0 && texts.every((text) => timeUnit(text) !== null) ? column : null
}
