/** Cells as text for a terminal: as wide as it is, no frames. What a scenario says is shown, never carried out. */

import { styledText, type Table, visibleLine, visibleText } from '@loopwright/charts/table'
import { type Cell, shownView } from '../cells/cell.ts'
import type { Figure } from '../cells/figure.ts'
import { plainText } from './plainText.ts'
import { tableText } from './tableText.ts'
import { TERMINAL_COLUMNS, type TerminalOptions } from './terminalOptions.ts'
import { wrap } from './wrap.ts'

/**
 * What a cell says in a terminal, without a line end; empty for cells that only a page can show.
 *
 * @example terminalText(proseCell('note', 'First.')).trim() // => 'First.'
 */
export function terminalText(cell: Cell, options: TerminalOptions = {}): string {
  const { colour = false, columns = TERMINAL_COLUMNS } = options
  const line = (text: string): string => wrap(visibleLine(text.replace(/`([^`]+)`/g, '$1')), columns)
  if ('pageOnly' in cell && cell.pageOnly === true) return ''
  switch (cell.kind) {
    case 'prose':
      return plainText(visibleText(cell.markdown), columns)
    case 'answer':
      return cell.sentences.map((sentence, index) => styledText(line(sentence), cell.tone ?? 'strong', colour && index === 0)).join('\n')
    case 'sure':
      return cell.sentences.map(line).join('\n')
    case 'run':
    case 'sweep':
      return line(cell.sentence)
    case 'table':
      return captioned(shownView(cell.views), options)
    case 'chart':
    case 'plan':
      return figureText(shownView(cell.views), options)
    case 'choice':
    case 'data':
      return ''
    case 'caution':
      return cell.tone === 'warning'
        ? `${styledText(`${visibleLine(cell.title)}:`, 'warning', colour)}\n${plainText(visibleText(cell.markdown), columns)}`
        : ''
  }
}

/** The finding, and the table that is part of the story. */
function figureText({ finding, table, tableOpen }: Figure, options: TerminalOptions): string {
  const found = wrap(visibleLine(finding), options.columns ?? TERMINAL_COLUMNS)
  return tableOpen ? `${found}\n\n${captioned(table, options)}` : found
}

/** What the table shows, then the table. */
function captioned(table: Table, options: TerminalOptions): string {
  return `${wrap(visibleLine(table.caption), options.columns ?? TERMINAL_COLUMNS)}\n${tableText(table, options)}`
}
