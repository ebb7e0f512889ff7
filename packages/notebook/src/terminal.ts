/** Cells as text for a terminal: 80 columns, no frames, tables of at most 8 columns. */

import type { Table } from '@loopwright/charts'
import { type Cell, shownView } from './cell.ts'
import { plainText } from './plainText.ts'
import { wrap } from './wrap.ts'

export const TERMINAL_COLUMNS = 80

export interface TerminalOptions {
  /** bold for the chosen row and for warnings; default false */
  readonly colour?: boolean
}

/**
 * What a cell says in a terminal, without a line end; empty for cells that only a page can show.
 * An answer is told in two parts, so that a table may stand between them: see `sureText`.
 */
export function terminalText(cell: Cell, options: TerminalOptions = {}): string {
  const bold = (text: string): string => (options.colour === true ? `\u001b[1m${text}\u001b[22m` : text)
  switch (cell.kind) {
    case 'prose':
      return plainText(cell.markdown, TERMINAL_COLUMNS)
    case 'answer':
      return cell.sentences
        .map((sentence, index) => (index === 0 ? bold(wrap(sentence, TERMINAL_COLUMNS)) : wrap(sentence, TERMINAL_COLUMNS)))
        .join('\n')
    case 'run':
    case 'sweep':
      return wrap(cell.sentence, TERMINAL_COLUMNS)
    case 'table':
      return cell.where === 'page' ? '' : tableText(shownView(cell.views), options)
    case 'chart':
    case 'plan':
      return wrap(shownView(cell.views).finding, TERMINAL_COLUMNS)
    case 'choice':
      return ''
    case 'caution':
      return cell.tone === 'warning' ? `${bold(`${cell.title}:`)}\n${plainText(cell.markdown, TERMINAL_COLUMNS)}` : ''
  }
}

/**
 * A table in columns two blanks apart; numbers to the right; the marked row begins with `>`.
 * Columns for the page only are left out; a note follows, wrapped.
 */
export function tableText(table: Table, options: TerminalOptions = {}): string {
  const kept = table.columns.flatMap((column, index) => (column.pageOnly ? [] : [index]))
  const heads = kept.map((index) => table.columns[index]!.head.split('\n'))
  const headLines = Math.max(1, ...heads.map((lines) => lines.length))
  const headRows = Array.from({ length: headLines }, (_, line) => heads.map((lines) => lines[line - (headLines - lines.length)] ?? ''))
  const body = table.rows.map((row) => kept.map((index) => row.cells[index] ?? ''))
  const widths = kept.map((_, place) => Math.max(0, ...[...headRows, ...body].map((cells) => [...(cells[place] ?? '')].length)))
  const set = (cells: readonly string[]): string =>
    cells
      .map((text, place) => {
        const blanks = ' '.repeat(Math.max(0, widths[place]! - [...text].length))
        return table.columns[kept[place]!]!.align === 'right' ? blanks + text : text + blanks
      })
      .join('  ')
      .trimEnd()
  const lines = headRows.map((cells) => `  ${set(cells)}`)
  for (const [place, cells] of body.entries()) {
    const marked = table.rows[place]!.marked
    const line = `${marked ? '>' : ' '} ${set(cells)}`
    lines.push(marked && options.colour === true ? `\u001b[1m${line}\u001b[22m` : line)
  }
  if (table.note !== null) lines.push(wrap(table.note, TERMINAL_COLUMNS))
  return lines.join('\n')
}
