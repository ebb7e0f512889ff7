/** Lists of times: in the scenario itself, or a column of a CSV file. */
import { cellNumber, readCsv, type Table } from '../../text/csv.ts'
import { describe, type Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { parseQuantity } from '../../text/quantity.ts'
import { addAtKey, type Context, child, entries, near, numberOf, quantity, textOf, fail } from '../context.ts'

export function unitSeconds(at: Located): number | undefined {
  const unit = textOf(child(at, 'unit'))
  return unit === null ? undefined : (parseQuantity(`1 ${unit}`, 'duration').value ?? undefined)
}

/** `values` in the file, or a column of a CSV file. */
export function times(context: Context, at: Located): number[] | undefined {
  const valuesAt = child(at, 'values')
  const file = child(at, 'file')
  const column = child(at, 'column')
  const unit = textOf(child(at, 'unit'))
  if ((valuesAt === null) === (file === null) || (file === null) !== (column === null)) return fail(context, at, say.valuesOrFile())
  if (file !== null && column !== null) return fromFile(context, at, file, column, unit)
  if (valuesAt === null || valuesAt.kind !== 'list') return undefined
  if (valuesAt.items.length === 0) return fail(context, valuesAt, say.listEmpty())
  const values: number[] = []
  for (const item of valuesAt.items) {
    if (item.kind === 'text') {
      const value = quantity(context, item, 'duration', 'zero')
      if (value === undefined) return undefined
      values.push(value)
      continue
    }
    if (numberOf(item) === null) return fail(context, item, say.notFinite(item.source === '' ? describe(item) : item.source))
    if (unit === null) return fail(context, valuesAt, say.unitForValues())
    const outcome = parseQuantity(`${item.source} ${unit}`, 'duration')
    if (outcome.fault !== null) return fail(context, item, outcome.fault.sentence)
    values.push(outcome.value)
  }
  return values
}

function fromFile(context: Context, at: Located, file: Located, column: Located, unit: string | null): number[] | undefined {
  const name = textOf(file)
  const wanted = textOf(column)
  if (name === null || wanted === null) return undefined
  if (unit === null) return fail(context, at, say.unitForValues())
  if (context.files === null) return fail(context, file, say.noFilesHere(name))
  const text = context.files(name)
  if (text === null) return fail(context, file, say.fileMissing(name))
  const table = readCsv(text)
  const index = table.columns.indexOf(wanted)
  if (index < 0) return fail(context, column, say.columnUnknown(wanted, near(context, wanted, table.columns), table.columns))
  const rows = chosen(context, child(at, 'where'), table)
  if (rows === null) return undefined
  const values: number[] = []
  for (const row of rows) {
    const cell = row.cells[index] ?? ''
    if (cell === '') continue
    const number = cellNumber(cell, table.decimalComma)
    const outcome = number === null ? null : parseQuantity(`${number} ${unit}`, 'duration')
    if (outcome === null || outcome.fault !== null) return fail(context, column, say.badCell(cell, row.line))
    values.push(outcome.value)
  }
  if (values.length === 0) return fail(context, column, say.listEmpty())
  if (context.tables.some(({ path }) => path === at.path)) return values
  const pooled = keyColumns(table, rows).filter(({ name: each }) => each !== wanted)
  const empty = rows.length - values.length
  context.tables.push({
    path: at.path,
    file: name,
    column: wanted,
    rows: table.rows.length,
    taken: values.length,
    others: table.rows.length - rows.length,
    empty,
    pooled: pooled.map((each) => each.name),
  })
  if (empty > 0) context.report.add(column, say.cellsEmpty(wanted, empty, rows.length))
  const [key] = pooled
  if (key !== undefined) context.report.add(column, say.rowsPooled(wanted, values.length, key.name, key.values))
  return values
}

/** The rows that "where" asks for; null if it asks for what is not there. */
function chosen(context: Context, where: Located | null, table: Table): Table['rows'] | null {
  let rows = table.rows
  for (const entry of entries(where)) {
    const index = table.columns.indexOf(entry.key)
    if (index < 0) {
      addAtKey(context, entry, say.columnUnknown(entry.key, near(context, entry.key, table.columns), table.columns))
      return null
    }
    const wanted = textOf(entry.value) ?? entry.value.source
    const left = rows.filter(({ cells }) => cells[index] === wanted)
    if (left.length === 0) {
      const known = [...new Set(rows.map(({ cells }) => cells[index] ?? ''))].filter((each) => each !== '')
      context.report.add(entry.value, say.whereNothing(entry.key, wanted, near(context, wanted, known), known))
      return null
    }
    rows = left
  }
  return rows
}

/** what a column is called that tells rows of different work apart */
const KEY = /\b(stations?|tasks?|operations?|steps?|work|jobs?|products?|variants?|models?|machines?|places?|parts?)\b/i

/** Columns that look like a key, and in which these rows differ. */
function keyColumns(table: Table, rows: Table['rows']): { name: string; values: string[] }[] {
  return table.columns.flatMap((name, index) => {
    const values = [...new Set(rows.map(({ cells }) => cells[index] ?? ''))].filter((each) => each !== '')
    const repeats = values.length < rows.length
    return KEY.test(name) && values.length > 1 && repeats ? [{ name, values }] : []
  })
}
