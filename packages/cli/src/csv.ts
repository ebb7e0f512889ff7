/** Tables as CSV (RFC 4180): comma, decimal point, full precision, one heading line, lines end in CR LF. */
export type CsvValue = string | number | boolean | null

export interface CsvTable {
  /** file name without the ending */
  readonly name: string
  readonly columns: readonly string[]
  readonly rows: readonly (readonly CsvValue[])[]
}

/**
 * The text of a table; null is an empty cell.
 *
 * @example csvText({ name: 'a', columns: ['zone', 'share'], rows: [['Z01, left', 0.5]] }) // => 'zone,share\r\n"Z01, left",0.5\r\n'
 */
export function csvText(table: CsvTable): string {
  return [table.columns, ...table.rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('')
}

function cell(value: CsvValue): string {
  const text = value === null ? '' : String(value)
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
