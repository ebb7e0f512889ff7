/** A table of one's own, from rows. */
import { type ColumnOf, fieldName, type Table, tableOf } from '@loopwright/charts/table'
import { Mistake } from '../load/fault.ts'
import { checkNames } from '../runner/knownNames.ts'
import { checkField, checkRows, decimalsOf, type OwnRow, ownText } from './rows.ts'

/** How a table of one's own looks. */
export interface TableOptions {
  /** one line; default: none */
  readonly caption?: string
  /** head of a column by its name in the rows, in this order; default: all names as they are */
  readonly columns?: Readonly<Record<string, string>>
  /** default: as many as the numbers have, three at most */
  readonly decimals?: number
  /** a line under the table */
  readonly note?: string
  /** of the cell, and name of its file; default: `table-1`, … */
  readonly id?: string
}

/** @throws RangeError  if there are no rows, or a column is none of theirs */
export function ownTable(rows: readonly OwnRow[], options: TableOptions = {}): Table {
  checkNames('a table', options, ['caption', 'columns', 'decimals', 'note', 'id'])
  const names = checkRows('the table', rows)
  const heads = options.columns ?? Object.fromEntries(names.map((name) => [name, name]))
  if (Object.keys(heads).length === 0) throw new Mistake('the table has no columns', `The rows have ${names.join(', ')}.`, 'columns')
  for (const name of Object.keys(heads)) checkField('the table', 'a column', name, names)
  const taken = new Set<string>()
  const columns = Object.entries(heads).map(([name, head]): ColumnOf<OwnRow> => {
    const values = rows.map((row) => row[name])
    const decimals = options.decimals ?? decimalsOf(values)
    const numbers = values.some((value) => typeof value === 'number')
    let field = fieldName(name) || 'column'
    while (taken.has(field)) field += '_'
    taken.add(field)
    return {
      head,
      align: numbers ? 'right' : 'left',
      text: (row) => ownText(row[name], decimals),
      data: [[field, head, (row) => row[name] ?? null]],
    }
  })
  return tableOf({ caption: options.caption ?? '', columns, rows, note: options.note ?? null })
}
