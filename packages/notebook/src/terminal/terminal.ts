/** Cells as text for a terminal: as wide as it is, no frames. What a scenario says is shown, never carried out. */

import { styledText, type Table, visibleLine, visibleText } from '@loopwright/charts/table'
import { type Cell, type FaultCell, shownView } from '../cells/cell.ts'
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
    case 'live':
      return ''
    case 'caution':
      return cell.tone === 'warning'
        ? `${styledText(`${visibleLine(cell.title)}:`, 'warning', colour)}\n${plainText(visibleText(cell.markdown), columns)}`
        : ''
    case 'fault':
      return faultLines(cell, options)
  }
}

/** The place, what was found there, the line of the notebook as it is, what would be right. */
function faultLines(
  { place, message, frame, fix, waiting }: FaultCell,
  { colour = false, columns = TERMINAL_COLUMNS }: TerminalOptions,
): string {
  const words = (text: string): string[] =>
    text === ''
      ? []
      : text.split('\n').flatMap((each) =>
          wrap(visibleLine(each), columns - 2)
            .split('\n')
            .map((part) => `  ${part}`),
        )
  return [
    styledText(visibleLine(`${place}  ${waiting ? 'waits' : 'failed'}`), waiting ? 'warning' : 'bad', colour),
    ...words(message),
    ...(frame === '' ? [] : frame.split('\n').map(visibleLine)),
    ...words(fix),
  ].join('\n')
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
