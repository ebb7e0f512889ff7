/** Whether the files of tables hold what the tables show: what the test of all tales asks. */
import type { Table, TableField, TableRow, TableValue } from '@loopwright/charts/table'
import type { Cell } from '../../packages/notebook/src/cells/cell.ts'

/**
 * Numbers that stand in a table and are not the rounding of a value that its file holds in the same row, as "cell, column, text".
 * Where a column has fields of its own the value must be one of these. A share may be shown in per cent, seconds as minutes or hours,
 * the limits of an interval as their distance from its mean, the first number above a range as its last one below.
 */
export function missingInFiles(cells: readonly Cell[]): string[] {
  return tablesOf(cells).flatMap(([id, table]) =>
    table.rows.flatMap((row) =>
      table.columns.flatMap(({ head }, column) => {
        const held = heldBehind(table, row, column)
        const text = row.cells[column]!
        const up = table.note?.includes('rounded up') ?? false
        return shownNumbers(text, up).every((shown) => isShown(shown, held)) ? [] : [`${id}, ${flat(head)}, ${text}`]
      }),
    ),
  )
}

/** Fields of the column; of the whole row where it has none, or tells so many of so many. */
function heldBehind({ columns }: Table, { values, cells }: TableRow, column: number): readonly Field[] {
  const of = (fields: readonly TableField[], from: number): Field[] =>
    fields.map((field, index) => ({ ...field, value: values[from + index]! }))
  const from = columns.slice(0, column).reduce((sum, { fields }) => sum + fields.length, 0)
  const own = of(columns[column]!.fields, from)
  const ofRow = columns.flatMap(({ fields }) => fields)
  return own.length > 0 && !/ of \d/.test(cells[column]!) ? own : of(ofRow, 0)
}

/** Those that the page shows. */
export function tablesOf(cells: readonly Cell[]): [string, Table][] {
  return cells.flatMap((cell): [string, Table][] => {
    switch (cell.kind) {
      case 'table':
        return cell.views.of.map(({ content }) => [cell.id, content])
      case 'chart':
      case 'plan':
        return cell.views.of.map(({ content }) => [cell.id, content.table])
      default:
        return []
    }
  })
}

interface Shown {
  readonly value: number
  /** how far a value may be from what is shown */
  readonly within: number
  /** "< 1" and "> 99": the value lies beyond */
  readonly beyond: '<' | '>' | null
  /** of "332 ± 12" */
  readonly part: 'mean' | 'half' | null
}

interface Field extends TableField {
  readonly value: TableValue
}

const NUMBER = /(?<![\p{L}\d_])([<>] )?([−-]?\d[\d\u202f]*(?:\.\d+)?)(?![\p{L}\d]*\p{L})/gu

/** @param up  lengths are not rounded to the nearest but up */
function shownNumbers(text: string, up: boolean): Shown[] {
  const half = / ± ([\d\u202f.]+)/.exec(text)?.[1]
  return [...text.matchAll(NUMBER)].map(([, sign, digits], index) => ({
    value: numberOf(digits!),
    within: Math.max(lastDigit(digits!), half === undefined ? 0 : roundedTo(half)) / (up ? 1 : 2),
    beyond: sign === undefined ? null : (sign[0] as '<' | '>'),
    part: half === undefined ? null : index === 0 ? 'mean' : 'half',
  }))
}

const numberOf = (digits: string): number => Number(digits.replaceAll('\u202f', '').replace('−', '-'))
const lastDigit = (digits: string): number => 10 ** -(/\.(\d+)/.exec(digits)?.[1]?.length ?? 0)

/** "30" is a half-width rounded to tens, and so is its mean. */
const roundedTo = (digits: string): number => (digits.includes('.') ? lastDigit(digits) : 10 ** /0*$/.exec(digits)![0].length)

function isShown({ value, within, beyond, part }: Shown, fields: readonly Field[]): boolean {
  const behind =
    part === 'half' ? fields.flatMap((_, index) => halfWidth(fields.slice(index, index + 3))) : candidates(fields, part === 'mean')
  return behind.some((held) => {
    if (beyond === '<') return held >= 0 && held < value
    if (beyond === '>') return held > value
    return Math.abs(held - value) <= within * (1 + 1e-9) + 1e-9 * Math.abs(held)
  })
}

function candidates(fields: readonly Field[], middle: boolean): number[] {
  const timed = fields.some(({ name, value }) => name === 'unit' && value === 's')
  return fields.flatMap(({ name, says, value }): number[] => {
    if (middle && /(^|_)(low|high)$/.test(name)) return []
    if (typeof value === 'string') return [...value.matchAll(NUMBER)].map(([, , digits]) => numberOf(digits!))
    if (typeof value !== 'number') return []
    if (says.includes('0 … 1')) return [value * 100]
    if (name.endsWith('_below')) return [value, value - 1]
    return timed || name.endsWith('_s') || name.startsWith('seconds') ? [value, value / 60, value / 3600] : [value]
  })
}

/** Of a mean and its limits, which may lie at different distances: the greater one. */
function halfWidth(fields: readonly Field[]): number[] {
  const [mean, low, high] = fields
  if (low === undefined || high === undefined || !/(^|_)low$/.test(low.name) || !/(^|_)high$/.test(high.name)) return []
  const [middle, least, most] = [mean!.value, low.value, high.value].map(Number)
  return [Math.max(middle! - least!, most! - middle!)]
}

const flat = (text: string): string => text.replaceAll('\n', ' ')
