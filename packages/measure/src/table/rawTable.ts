/** A table as it stands in a file, before anything is understood: cells by row, each with what the spreadsheet says of it. */

/** What a cell holds. A CSV file has texts and empty cells only. */
export interface Cell {
  readonly kind: 'empty' | 'text' | 'number' | 'time' | 'date' | 'truth' | 'error'
  /** as written, without blanks around it; of numbers and times as plain text */
  readonly text: string
  /** number: its value; time: seconds; date: seconds from 1970-01-01 00:00 of the wall clock; else null */
  readonly value: number | null
  /** time: shown as hours and minutes, without seconds */
  readonly hoursAndMinutes?: true
  /** the value was computed by a formula of the spreadsheet, as last saved */
  readonly formula?: true
  /** filled from the cell it is merged with, above it */
  readonly merged?: true
}

/** A row of a file. */
export interface RawRow {
  /** number of the line or of the spreadsheet's row, from 1; of a record over several lines the first */
  readonly line: number
  /** lines that the record takes; 1 but for cells with line breaks */
  readonly lines: number
  readonly cells: readonly Cell[]
}

/** A table as it stands in a file. */
export interface RawTable {
  /** as given; with the sheet where a file has several */
  readonly file: string
  /** places are told as `cell C7` */
  readonly spreadsheet: boolean
  /** what stands between the cells of a CSV file; null: a spreadsheet */
  readonly separator: string | null
  readonly rows: readonly RawRow[]
  /** what was made of the file, in sentences */
  readonly notes: readonly string[]
}

export const EMPTY: Cell = { kind: 'empty', text: '', value: null }

const ODD_BLANK = /[\u00a0\u2007\u202f\u200b\ufeff]/

/** A text as a cell. */
export function textCell(text: string): Cell {
  const trimmed = (ODD_BLANK.test(text) ? text.replaceAll(/[\u00a0\u2007\u202f\u200b\ufeff]/g, ' ') : text).trim()
  return trimmed === '' ? EMPTY : { kind: 'text', text: trimmed, value: null }
}

/**
 * Name of a spreadsheet's column.
 *
 * @param index  from 0
 * @example columnLetters(27) // => 'AB'
 */
export function columnLetters(index: number): string {
  const rest = Math.floor(index / 26)
  return `${rest === 0 ? '' : columnLetters(rest - 1)}${String.fromCharCode(65 + (index % 26))}`
}

/** Where a cell stands, as people find it; `head` is the text above its column. */
export function placeOf(table: Pick<RawTable, 'spreadsheet'>, line: number, column: number | null, head = ''): string {
  const named = head === '' ? '' : ` ("${head}")`
  if (column === null) return table.spreadsheet ? `row ${line}` : `line ${line}`
  return table.spreadsheet ? `cell ${columnLetters(column)}${line}${named}` : `line ${line}, column ${column + 1}${named}`
}

/** Nothing stands in the row. */
export const isBlank = (row: RawRow): boolean => row.cells.every(({ kind }) => kind === 'empty')
