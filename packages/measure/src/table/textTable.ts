/** A table of a CSV file: separator, quotes, byte order mark, encoding. */
import { type CsvError, parse } from 'csv-parse/sync'
import { type RawRow, type RawTable, textCell } from './rawTable.ts'
import { remembered } from './remembered.ts'
import { refusal } from './tableError.ts'

const SEPARATORS = [';', '\t', ',', '|'] as const
const WORDS: Readonly<Record<string, string>> = { ';': 'semicolons', '\t': 'tabs', ',': 'commas', '|': 'upright strokes' }
/** tables that people keep are shorter */
const LINES_MAX = 200_000
/** characters of a row */
const ROW_MAX = 1_000_000
/** lines that decide about the separator */
const LOOKED_AT = 40

/**
 * A table of text: cells between `;`, tabs, `,` or `|`, whichever parts the lines most evenly.
 *
 * @param text   of the file; a byte order mark is ignored
 * @param file   as given
 * @param notes  what was found before
 * @throws TableError  for a quote that never closes, and for a file without a line
 * @example textTable('task;seconds\nwire;45,5\n', 'times.csv').rows[1].cells[1].text // => '45,5'
 */
export function textTable(text: string, file: string, notes: readonly string[] = []): RawTable {
  if (text.trim() === '') throw refusal(file, '', 'the file is empty', 'save the table again')
  const lines = text.split(/\r\n|\n|\r/, LINES_MAX + 1).length
  if (lines > LINES_MAX)
    throw refusal(file, `line ${LINES_MAX + 1}`, `tables of up to ${LINES_MAX} lines are read`, 'keep only the rows of the study')
  const separator = separatorOf(text)
  const said = separator === null ? 'one column' : `cells parted by ${WORDS[separator]}`
  const told = (rows: readonly RawRow[]): RawTable => ({
    file,
    spreadsheet: false,
    separator,
    rows: withoutEnd(rows),
    notes: [...notes, said],
  })
  if (!text.includes('"')) return told(plainRows(text, separator ?? ';', file))
  let records: { info: { lines: number }; record: string[] }[]
  try {
    records = parse(text.replaceAll(/\r\n?/g, '\n'), {
      record_delimiter: '\n',
      bom: true,
      delimiter: separator ?? ';',
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
      info: true,
      max_record_size: ROW_MAX,
    }) as unknown as typeof records
  } catch (error) {
    throw damaged(error as CsvError, text, separator ?? ';', file)
  }
  let line = 1
  const cellOf = remembered(textCell)
  const rows = records.map(({ info, record }): RawRow => {
    // `lines` is the last line of the record
    const row = { line, lines: Math.max(1, info.lines - line + 1), cells: record.map(cellOf) }
    line = Math.max(line, info.lines) + 1
    return row
  })
  return told(rows)
}

/** Without a quote each line is a row, and needs no parser: that makes an error for each row of another length, and throws it away. */
function plainRows(text: string, separator: string, file: string): RawRow[] {
  const lines = text.replace(/^\ufeff/, '').split(/\r\n|\n|\r/)
  const long = lines.findIndex(({ length }) => length > ROW_MAX)
  if (long >= 0) throw refusal(file, `line ${long + 1}`, `lines of up to ${ROW_MAX} characters are read`, 'save the table again')
  const cellOf = remembered(textCell)
  return lines.map((cells, index) => ({ line: index + 1, lines: 1, cells: cells.split(separator).map(cellOf) }))
}

/** Blank rows behind the last one are no rows. */
function withoutEnd(rows: readonly RawRow[]): RawRow[] {
  const last = rows.findLastIndex(({ cells }) => cells.some(({ kind }) => kind !== 'empty'))
  return rows.slice(0, last + 1)
}

/** The sign that parts most lines into equally many cells; null: there is none. */
function separatorOf(text: string): string | null {
  const lines = text
    .split(/\r\n|\n|\r/, 4 * LOOKED_AT)
    .filter((line) => line.trim() !== '')
    .slice(0, LOOKED_AT)
    .map((line) => line.replaceAll(/"[^"]*"/g, ''))
  const scores = SEPARATORS.map((sign) => {
    const counts = lines.map((line) => line.split(sign).length - 1).filter((count) => count > 0)
    const times = new Map<number, number>()
    for (const count of counts) times.set(count, (times.get(count) ?? 0) + 1)
    return { sign, score: Math.max(0, ...times.values()), all: counts.length }
  })
  // a decimal comma parts lines evenly as well: whatever else does it in about as many lines is the separator
  const most = Math.max(...scores.map(({ score }) => score))
  if (most === 0) return scores.find(({ all }) => all > 0)?.sign ?? null
  return scores.find(({ score }) => score > 0 && score >= 0.8 * most)!.sign
}

function damaged(error: CsvError, text: string, separator: string, file: string): Error {
  if (error.code === 'CSV_QUOTE_NOT_CLOSED' || error.code === 'CSV_MAX_RECORD_SIZE' || error.code === 'CSV_INVALID_CLOSING_QUOTE') {
    const line = error.code === 'CSV_INVALID_CLOSING_QUOTE' ? (error.lines as number) : openQuoteLine(text, separator)
    const what = error.code === 'CSV_INVALID_CLOSING_QUOTE' ? 'text stands behind a closing quote' : 'a quote opens here and never closes'
    return refusal(file, `line ${line}`, what, 'close it, or write "" for a quote inside a cell')
  }
  if (typeof error.code === 'string' && error.code.startsWith('CSV_'))
    return refusal(file, '', `it cannot be parted into cells (${error.code})`, 'save it again as CSV')
  return error
}

/** Line of the quote that is still open at the end. */
function openQuoteLine(text: string, separator: string): number {
  let open = 0
  let line = 1
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]
    if (sign === '\n') line++
    if (sign !== '"') continue
    if (open > 0) {
      if (text[at + 1] === '"') at++
      else open = 0
    } else if (at === 0 || text[at - 1] === separator || text[at - 1] === '\n' || text[at - 1] === '\ufeff') open = line
  }
  return Math.max(1, open)
}
