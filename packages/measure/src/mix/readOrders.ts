/** Orders or a plan: which products, how many, with which options, when. */
import { type Account, bookkeeping, isFormula } from '../table/account.ts'
import { findColumns, type Roles } from '../table/heads.ts'
import { likeNames } from '../table/likeNames.ts'
import { type Cell, EMPTY, type RawRow, type RawTable } from '../table/rawTable.ts'
import { refusal } from '../table/tableError.ts'
import { orderOf } from '../times/readTimes.ts'
import { type DayOrder, readInstant } from '../values/instant.ts'
import { numberStyle, readNumber } from '../values/numberStyle.ts'

/** One line of the orders. */
export interface Order {
  /** without options */
  readonly product: string
  /** in the order of the table's columns */
  readonly options: readonly string[]
  /** whole number above 0 */
  readonly units: number
  /** of the wall clock, seconds; null: the table has no days */
  readonly when: number | null
  /** the day has a clock time */
  readonly timed: boolean
  readonly line: number
}

/** A table of orders, understood. */
export interface OrderTable {
  readonly file: string
  readonly orders: readonly Order[]
  /** options by their columns */
  readonly options: readonly string[]
  readonly account: Account
  readonly said: readonly string[]
  readonly doubts: readonly string[]
}

/** What the user says of a table of orders. */
export interface OrderOptions {
  readonly columns?: Readonly<Record<string, string>>
  readonly days?: DayOrder
  readonly decimal?: 'point' | 'comma'
}

const ORDER_ROLES = {
  variant: ['variant', 'product', 'model', 'type', 'article', 'item', 'productname', 'variante', 'modell', 'artikel', 'produkt'],
  units: ['quantity', 'qty', 'units', 'count', 'pieces', 'pcs', 'amount', 'menge', 'anzahl', 'stück', 'stueck'],
  when: ['when', 'due', 'duedate', 'date', 'day', 'orderdate', 'start', 'planned', 'datum', 'termin'],
  options: ['options', 'option', 'extras', 'kit', 'optionen'],
  order: ['order', 'orderno', 'ordernumber', 'number', 'no', 'id', 'sequence', 'position', 'auftrag'],
  remark: ['remark', 'remarks', 'note', 'customer', 'comment', 'kunde', 'bemerkung'],
} as const satisfies Roles

const YES = /^(yes|y|x|1|true|ja|j|✓|✔)$/i
const NO = /^(no|n|0|false|nein|-|–)?$/i
const UNITS_MAX = 1_000_000

/**
 * The orders of a table: a row for each order or unit. Columns that hold yes and no alone are options.
 *
 * @throws TableError  where it is no table of orders
 * @example readOrders(readTable(new TextEncoder().encode('model,qty,coldKit\nsmall,3,yes\n'), 'orders.csv')).orders[0].options // => ['coldKit']
 */
export function readOrders(table: RawTable, options: OrderOptions = {}): OrderTable {
  const columns = findColumns(
    table,
    ORDER_ROLES,
    options.columns ?? {},
    (at) => at.has('variant'),
    'a table of orders has a column of products or models',
  )
  const { at, heads } = columns
  const books = bookkeeping(table, columns)
  const cell = (row: RawRow, role: string): Cell => row.cells[at.get(role) ?? -1] ?? EMPTY
  const taken = new Set(at.values())
  const flags = heads.flatMap(({ text }, column) => {
    if (text === '' || taken.has(column)) return []
    const texts = books.body.map((row) => (row.cells[column] ?? EMPTY).text)
    return texts.some((one) => YES.test(one)) && texts.every((one) => YES.test(one) || NO.test(one)) ? [{ column, name: text }] : []
  })
  const order = options.days ?? orderOf(table, columns, books.body, ['when'])
  const style =
    options.decimal ??
    numberStyle(
      books.body.map((row) => cell(row, 'units').text),
      table.separator,
    )
  const orders: Order[] = []
  for (const row of books.body) {
    const product = cell(row, 'variant').text.replaceAll(/\s+/g, ' ')
    if (product === '') {
      books.refuseRow(row, 'it names no product', at.get('variant')!)
      continue
    }
    if (isFormula(product) || product.includes('/')) {
      books.refuseRow(
        row,
        isFormula(product)
          ? `"${product}" is a formula, and nothing is computed`
          : `"${product}" has a "/" in it, which no name of a scenario may have`,
        at.get('variant')!,
      )
      continue
    }
    const amount = at.has('units') ? (cell(row, 'units').value ?? readNumber(cell(row, 'units').text, style)) : 1
    if (typeof amount !== 'number' || !Number.isInteger(amount) || amount <= 0 || amount > UNITS_MAX) {
      const text = cell(row, 'units').text
      books.refuseRow(
        row,
        amount === 0
          ? 'it orders none'
          : amount === 'unsure'
            ? `"${text}" may have decimals or thousands; say which (--decimal comma or --decimal point)`
            : `"${text}" is no number of units`,
        at.get('units')!,
      )
      continue
    }
    let when: number | null = null
    let timed = false
    if (at.has('when')) {
      const read = readInstant(cell(row, 'when'), order)
      if (!read.ok || read.value.is === 'clock') {
        books.refuseRow(row, read.ok ? 'it has a clock time and no day' : read.reason, at.get('when')!)
        continue
      }
      ;[when, timed] = [read.value.seconds, read.value.is === 'instant']
    }
    const listed = cell(row, 'options')
      .text.split(/[,;+&]/)
      .map((one) => one.trim())
      .filter((one) => one !== '' && !NO.test(one))
    const flagged = flags.filter(({ column }) => YES.test((row.cells[column] ?? EMPTY).text)).map(({ name }) => name)
    orders.push({ product, options: [...new Set([...flagged, ...listed])], units: amount, when, timed, line: row.line })
  }
  const account: Account = books.account()
  const [first] = account.refusals
  if (orders.length === 0)
    throw refusal(table.file, first?.place ?? '', `no order can be read${first === undefined ? '' : `; here ${first.reason}`}`, '')
  const names = [...new Set([...flags.map(({ name }) => name), ...orders.flatMap((one) => one.options)])]
  const doubts = likeNames(
    orders.map(({ product }) => product),
    'products',
  )
  return {
    file: table.file,
    orders,
    options: names,
    account,
    said: [
      ...table.notes,
      `columns: ${columns.said.join(', ')}`,
      ...(names.length === 0 ? [] : [`options: ${names.join(', ')}`]),
      ...(at.has('units') ? [] : ['each row is one unit']),
    ],
    doubts,
  }
}
