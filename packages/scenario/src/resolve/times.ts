/** Lists of times: in the scenario itself, or a column of a CSV file. */
import { cellNumber, readCsv } from '../csv.ts'
import { describe, type Located } from '../located.ts'
import * as say from '../messages.ts'
import { parseQuantity } from '../quantity.ts'
import { type Context, child, near, numberOf, quantity, textOf } from './context.ts'

function fail(context: Context, at: Located, sentence: say.Sentence): undefined {
  context.report.add(at, sentence)
  return undefined
}

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
  const values: number[] = []
  for (const row of table.rows) {
    const cell = row.cells[index] ?? ''
    if (cell === '') continue
    const number = cellNumber(cell, table.decimalComma)
    const outcome = number === null ? null : parseQuantity(`${number} ${unit}`, 'duration')
    if (outcome === null || outcome.fault !== null) return fail(context, column, say.badCell(cell, row.line))
    values.push(outcome.value)
  }
  return values.length === 0 ? fail(context, column, say.listEmpty()) : values
}
