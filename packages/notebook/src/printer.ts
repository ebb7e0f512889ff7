/** Prints cells to a terminal in the order they come: an answer, then the table it rests on, then how sure it is; what was simulated comes last. */
import type { Cell } from './cell.ts'
import { TERMINAL_COLUMNS, type TerminalOptions, terminalText } from './terminal.ts'
import { wrap } from './wrap.ts'

export interface Printer {
  readonly print: (cell: Cell) => void
  /** says what is still held back */
  readonly end: () => void
}

/** @param log  takes one text; the line end is its own matter */
export function printer(log: (text: string) => void, options: TerminalOptions = {}): Printer {
  let sure: readonly string[] = []
  const simulated: string[] = []
  let last: Cell['kind'] | null = null
  /** a heading waits for what it heads */
  let heading: string | null = null
  const say = (text: string, kind: Cell['kind']): void => {
    if (text === '') return
    if (heading !== null) {
      if (last !== null) log('')
      log(heading)
      last = 'prose'
      heading = null
    }
    const together = last === kind && (kind === 'chart' || kind === 'plan')
    if (last !== null && !together) log('')
    log(text)
    last = kind
  }
  const saySure = (): void => {
    say(sure.map((sentence) => wrap(sentence, TERMINAL_COLUMNS)).join('\n'), 'answer')
    sure = []
  }
  return {
    print: (cell) => {
      const text = terminalText(cell, options)
      if (cell.kind === 'prose' && /^#+ [^\n]*$/.test(cell.markdown.trim())) heading = text
      else if (cell.kind === 'sweep' || cell.kind === 'run') simulated.push(text)
      else say(text, cell.kind)
      if (cell.kind === 'answer') sure = cell.sure
      if (cell.kind === 'table' && cell.where !== 'page') saySure()
    },
    end: () => {
      heading = null
      saySure()
      say(simulated.join('\n'), 'sweep')
    },
  }
}
