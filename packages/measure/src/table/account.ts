/** What became of every row of a file: read, or refused with its place and reason. */
import { type Columns, headOf } from './heads.ts'
import { isBlank, placeOf, type RawRow, type RawTable } from './rawTable.ts'
import { remembered } from './remembered.ts'

/** A row or a cell that was not taken, and why. */
export interface Refusal {
  readonly line: number
  /** such as `line 7, column 3 ("seconds")` */
  readonly place: string
  readonly reason: string
  /** false: the rest of its row was read */
  readonly wholeRow: boolean
}

/** Rows of a file: `rows` = `read` + the refusals of whole rows, always. */
export interface Account {
  /** other than heads, up to the last one with anything in it */
  readonly rows: number
  readonly heads: number
  readonly read: number
  readonly refusals: readonly Refusal[]
}

/** Keeps the account while a table is read. */
export interface Bookkeeping {
  /** rows below the heads that hold data */
  readonly body: readonly RawRow[]
  readonly refuseRow: (row: RawRow, reason: string, column?: number) => void
  readonly refuseCell: (row: RawRow, column: number, reason: string) => void
  /** every row of the body that was not refused counts as read */
  readonly account: () => Account
}

const TOTAL =
  /^(grand |sub-?)?(totals?|sum|average|avg|mean|median|min|max|minimum|maximum|std\.? ?dev\.?|stdev|standard deviation|count|summe|gesamt|zwischensumme|mittelwert|mittel|durchschnitt|anzahl|Σ|ø|x̄)\s*[:.=]?$/i

/**
 * Whether a text heads a row or a column of sums or means.
 *
 * @example isTotal('Average:') // => true
 */
export const isTotal = (text: string): boolean => TOTAL.test(text.trim())

/** A name that a spreadsheet would compute: it is refused, and nothing is computed. */
export const isFormula = (text: string): boolean => /^[=@+]/.test(text)

/** characters; a longer cell is neither a time nor a name */
const CELL_MAX = 1000

/**
 * Rows that are no data are refused at once: above the heads, blank, sums and means, heads that come again, cells over several lines.
 *
 * @param unitsAt  column of units, in which "min" is no least of anything
 */
export function bookkeeping(table: RawTable, { heads, bodyFrom, headRows }: Columns, unitsAt: number | null = null): Bookkeeping {
  const refusals: Refusal[] = []
  const refused = new Set<RawRow>()
  const place = (row: RawRow, column: number | null): string =>
    placeOf(table, row.line, column, column === null ? '' : (heads[column]?.text ?? ''))
  const refuseRow = (row: RawRow, reason: string, column?: number): void => {
    if (refused.has(row)) return
    refused.add(row)
    refusals.push({ line: row.line, place: place(row, column ?? null), reason, wholeRow: true })
  }
  const rows = table.rows.filter((_, index) => index < bodyFrom - headRows || index >= bodyFrom)
  for (const row of table.rows.slice(0, bodyFrom - headRows)) refuseRow(row, isBlank(row) ? 'it is empty' : 'it stands above the heads')
  const plainOf = remembered((text: string) => headOf(text).plain)
  const body = table.rows.slice(bodyFrom).filter((row) => {
    const why = noData(row, heads, table, unitsAt, plainOf)
    if (why !== null) refuseRow(row, why)
    return why === null
  })
  return {
    body,
    refuseRow,
    refuseCell: (row, column, reason) => {
      refusals.push({ line: row.line, place: place(row, column), reason, wholeRow: false })
    },
    account: () => {
      const lines = new Set([...refused].map(({ line }) => line))
      return {
        rows: rows.length,
        heads: headRows,
        read: rows.length - refused.size,
        refusals: refusals.filter((one) => one.wholeRow || !lines.has(one.line)).toSorted((a, b) => a.line - b.line),
      }
    },
  }
}

function noData(
  row: RawRow,
  heads: Columns['heads'],
  table: RawTable,
  unitsAt: number | null,
  plainOf: (text: string) => string,
): string | null {
  if (isBlank(row)) return 'it is empty'
  if (
    row.lines > 1 &&
    row.cells.some(({ text }) => text.includes('\n') && (text.includes(table.separator ?? '\n\n') || text.split('\n').length > 3))
  )
    return `a cell in it runs over ${row.lines} lines: a quote opens in it and closes too late`
  const long = row.cells.findIndex(({ text }) => text.length > CELL_MAX)
  if (long >= 0) return `cell ${long + 1} holds ${row.cells[long]!.text.length} characters, which is no measurement`
  const sum = row.cells.find(({ kind, text }, column) => kind === 'text' && column !== unitsAt && isTotal(text))
  if (sum !== undefined) return `"${sum.text}": a row of sums or means is no measurement`
  if (row.cells.every(({ kind, text }, column) => kind === 'empty' || (text !== '' && plainOf(text) === (heads[column]?.plain ?? ''))))
    return 'the heads come again'
  const extra = row.cells.findIndex(({ kind }, column) => kind !== 'empty' && column >= heads.length)
  if (extra >= 0 && !table.spreadsheet)
    return `it has ${row.cells.length} cells under ${heads.length} heads${table.separator === ',' ? '; decimal commas need a table parted by semicolons, or quotes' : ''}`
  return null
}

/**
 * The account in one sentence.
 *
 * @example accountWords({ rows: 3, heads: 1, read: 2, refusals: [{ line: 4, place: 'line 4', reason: 'it is empty', wholeRow: true }] }) // => '3 rows below 1 row of heads: 2 read + 1 refused.'
 */
export function accountWords({ rows, heads, read, refusals }: Account): string {
  const cells = refusals.filter(({ wholeRow }) => !wholeRow).length
  const more = cells === 0 ? '' : ` In the rows read, ${cells} cell${cells === 1 ? ' was' : 's were'} refused.`
  return `${rows} rows below ${heads} row${heads === 1 ? '' : 's'} of heads: ${read} read + ${rows - read} refused.${more}`
}
