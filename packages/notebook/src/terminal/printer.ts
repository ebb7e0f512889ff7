/** Prints cells to a terminal in the order they come; what was simulated comes last. */
import type { Cell } from '../cells/cell.ts'
import { terminalText } from './terminal.ts'
import type { TerminalOptions } from './terminalOptions.ts'

/** Takes cells as they come. */
export interface Printer {
  readonly print: (cell: Cell) => void
  /** says what is still held back */
  readonly end: () => void
}

/**
 * Prints cells in the order they come; what was simulated comes last.
 *
 * @param log  takes one text; the line end is its own matter
 * @example ((told) => (printer((text) => told.push(text)).print(proseCell('note', 'First.')), told))([]) // => ['First.']
 */
export function printer(log: (text: string) => void, options: TerminalOptions = {}): Printer {
  const simulated: string[] = []
  let last: Cell['kind'] | null = null
  /** a heading waits for what it heads */
  let heading: string | null = null
  const say = (text: string, kind: Cell['kind'], open: boolean): void => {
    if (text === '') return
    if (heading !== null) {
      if (last !== null) log('')
      log(heading)
      last = 'prose'
      heading = null
    }
    const together = last === kind && (kind === 'chart' || kind === 'plan') && !open
    if (last !== null && !together) log('')
    log(text)
    last = kind
  }
  return {
    print: (cell) => {
      const text = terminalText(cell, options)
      if (cell.kind === 'prose' && /^#+ [^\n]*$/.test(cell.markdown.trim())) heading = text === '' ? heading : text
      else if (cell.kind === 'sweep' || cell.kind === 'run') simulated.push(text)
      else say(text, cell.kind, cell.kind === 'chart' && cell.views.of.some(({ content }) => content.tableOpen))
    },
    end: () => {
      heading = null
      say(simulated.join('\n'), 'sweep', false)
    },
  }
}
