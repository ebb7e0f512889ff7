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
  // the cell has nothing but blanks so far; asked of the cell itself, many quotes would take a time that grows with the square of their number
  let blank = true
  let quoted = false
  let line = 1
  let startLine = 1
  const add = (sign: string): void => {
    cell += sign
    if (sign.trim() !== '') blank = false
  }
  const endCell = (): void => {
    cells.push(cell.trim())
    cell = ''
    blank = true
  }
  const endRow = (): void => {
    endCell()
    if (cells.length > 1 || cells[0] !== '') rows.push({ cells, line: startLine })
    cells = []
  }
  for (let at = 0; at < body.length; at++) {
    const sign = body[at]!
    if (sign === '\n') line++
    if (quoted) {
      if (sign !== '"') add(sign)
      else if (body[at + 1] === '"') add(body[++at]!)
      else quoted = false
    } else if (sign === '"' && blank) quoted = true
    else if (sign === separator) endCell()
    else if (sign === '\n') {
      endRow()
      startLine = line
    } else if (sign !== '\r') add(sign)
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
