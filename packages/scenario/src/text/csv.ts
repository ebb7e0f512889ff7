/** A table of a CSV file, only as far as a column of times needs it: separator by the header line, quotes, decimal comma where the separator leaves room for it. */

export interface Table {
  readonly columns: readonly string[]
  /** rows of cells as text, and the line each begins on (from 1) */
  readonly rows: readonly { readonly cells: readonly string[]; readonly line: number }[]
  readonly decimalComma: boolean
}

/**
 * A table of a text: comma, semicolon or tab between cells, the first row its heads.
 *
 * @param text  of the file; a byte order mark is ignored, empty lines are skipped
 * @example readCsv('a;b\n1,5;2\n').rows[0]?.cells // => ['1,5', '2']
 */
export function readCsv(text: string): Table {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text
  const header = body.slice(0, body.search(/[\r\n]|$/))
  const separator = [';', '\t', ','].find((sign) => header.includes(sign)) ?? ','
  const rows: { cells: string[]; line: number }[] = []
  let cells: string[] = []
  let cell = ''
  let quoted = false
  let line = 1
  let startLine = 1
  const endRow = (): void => {
    cells.push(cell.trim())
    if (cells.length > 1 || cells[0] !== '') rows.push({ cells, line: startLine })
    cells = []
    cell = ''
  }
  for (let at = 0; at < body.length; at++) {
    const sign = body[at]!
    if (sign === '\n') line++
    if (quoted) {
      if (sign !== '"') cell += sign
      else if (body[at + 1] === '"') cell += body[++at]
      else quoted = false
    } else if (sign === '"' && cell.trim() === '') quoted = true
    else if (sign === separator) {
      cells.push(cell.trim())
      cell = ''
    } else if (sign === '\n') {
      endRow()
      startLine = line
    } else if (sign !== '\r') cell += sign
  }
  endRow()
  const [first, ...rest] = rows
  return { columns: first?.cells ?? [], rows: rest, decimalComma: separator !== ',' }
}

/**
 * The number in a cell, with its decimal comma turned into a point.
 *
 * @returns null if it is no plain number
 */
export function cellNumber(cell: string, decimalComma: boolean): string | null {
  const text = decimalComma && /^[+-]?\d+,\d+$/.test(cell) ? cell.replace(',', '.') : cell
  return /^[+-]?\d+(\.\d+)?([eE][+-]?\d+)?$/.test(text) ? text : null
}
