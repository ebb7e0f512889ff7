/** Rows as a notebook has them: plain objects, one for each line of a table or mark of a chart. */
import { nearest } from '@loopwright/scenario'
import { formatNumber } from '@loopwright/charts/table'
import { Mistake } from '../load/fault.ts'
import { shown } from '../runner/knownNames.ts'

/** A value of a row. */
export type OwnValue = string | number | boolean | null | undefined

/** Values by name. */
export type OwnRow = Readonly<Record<string, OwnValue>>

/**
 * Refuses what is no list of rows, and one that is empty.
 *
 * @returns  the names of the rows, in the order in which they come
 */
export function checkRows(what: string, rows: unknown): string[] {
  if (!Array.isArray(rows))
    throw new Mistake(`${what} takes rows as a list of objects, not ${shown(rows)}`, 'Write `rows: [{ carriers: 8, units: 320 }, …]`.')
  if (rows.length === 0) throw new Mistake(`${what} has no rows: there is nothing to show`, 'Look at what the rows are made of.', 'rows')
  const names = new Set<string>()
  for (const [index, row] of rows.entries()) {
    if (typeof row !== 'object' || row === null || Array.isArray(row))
      throw new Mistake(`row ${index + 1} of ${what} is ${shown(row)}, not an object`, 'Write `{ carriers: 8, units: 320 }`.')
    for (const [name, value] of Object.entries(row as object)) {
      names.add(name)
      if (value !== null && value !== undefined && !['string', 'number', 'boolean'].includes(typeof value))
        throw new Mistake(
          `“${name}” in row ${index + 1} of ${what} is ${shown(value)}`,
          'A value is a number, a text, or true or false.',
          name,
        )
    }
  }
  return [...names]
}

/** Refuses a name that no row has. */
export function checkField(what: string, role: string, name: unknown, names: readonly string[]): void {
  if (typeof name === 'string' && names.includes(name)) return
  const near = typeof name === 'string' ? nearest(name, names) : null
  const has = `The rows have ${names.join(', ')}.`
  throw new Mistake(
    `${role} of ${what} is ${shown(name)}, which no row has`,
    near === null ? has : `Did you mean "${near}"? ${has}`,
    typeof name === 'string' ? name : role,
  )
}

/** decimals by which a number is still told apart from its like: as many digits as it has, three at most */
const DECIMALS_MAX = 3

/** Decimals that numbers of one column share. */
export function decimalsOf(values: readonly OwnValue[]): number {
  const numbers = values.filter((value): value is number => typeof value === 'number' && Number.isFinite(value))
  const needed = numbers.map((value) => String(Number(value.toFixed(DECIMALS_MAX))).split('.')[1]?.length ?? 0)
  return Math.max(0, ...needed)
}

/** A value as it is read. */
export function ownText(value: OwnValue, decimals: number): string {
  if (value === null || value === undefined) return ''
  if (typeof value === 'number') return Number.isFinite(value) ? formatNumber(value, decimals) : '–'
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : value
}
