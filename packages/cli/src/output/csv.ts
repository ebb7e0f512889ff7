/**
 * Tables as CSV (RFC 4180): full precision, one heading line, lines end in CR LF. Of the two styles, `comma` has commas and a decimal point, `semicolon` has
 * semicolons and a decimal comma, as spreadsheets expect them where people write 0,5.
 */
export type CsvValue = string | number | boolean | null

export type CsvStyle = 'comma' | 'semicolon'

export interface CsvTable {
  /** file name without the ending */
  readonly name: string
  readonly columns: readonly string[]
  readonly rows: readonly (readonly CsvValue[])[]
}

/**
 * The text of a table; null is an empty cell. A text that a spreadsheet would carry out as a formula gets an apostrophe before it.
 *
 * @example csvText({ name: 'a', columns: ['zone', 'share'], rows: [['Z01, left', 0.5]] }) // => 'zone,share\r\n"Z01, left",0.5\r\n'
 */
export function csvText(table: CsvTable, style: CsvStyle = 'comma'): string {
  const between = style === 'comma' ? ',' : ';'
  return [table.columns, ...table.rows].map((row) => `${row.map((value) => cell(value, style)).join(between)}\r\n`).join('')
}

function cell(value: CsvValue, style: CsvStyle): string {
  if (typeof value === 'number') return style === 'comma' ? String(value) : String(value).replace('.', ',')
  const text = value === null ? '' : harmless(String(value))
  return /[",;\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** With these a spreadsheet begins a formula. OWASP, CSV Injection: = + - @, tab and carriage return; they are also found behind blanks. */
const FORMULA = /^\s*[=+\-@\t\r]/

/** A number written as text is no formula. */
const NUMBER = /^\s*[-+]?\d+([.,]\d+)?(e[-+]?\d+)?\s*$/i

const harmless = (text: string): string => (FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text)
