/** One line on standard error that tells how far something is: renewed on a terminal; elsewhere, where lines stay, a new one now and then. */
import type { Shell } from './shell.ts'
import { wrapText } from './wrapText.ts'

/** milliseconds between two renewals, and between two lines that stay */
const EVERY_MS = 100
const STAYING_EVERY_MS = 10_000
const CLEAR_LINE = '\r\u001b[2K'

/** A line that is renewed. */
export interface RenewedLine {
  /** shows how far it is, unless the last time was a moment ago; `line` is asked only then */
  readonly show: (line: (columns: number) => string) => void
  /** takes the line away, so that something else may be written */
  readonly clear: () => void
  /** says something that stays, in its place */
  readonly say: (sentence: string) => void
}

/** A line that nothing stands in yet. */
export function renewedLine({ err, now }: Pick<Shell, 'err' | 'now'>): RenewedLine {
  const [every, before] = err.isTerminal ? [EVERY_MS, Number.NEGATIVE_INFINITY] : [STAYING_EVERY_MS, now()]
  let shown = before
  const clear = (): void => {
    if (err.isTerminal) err.write(CLEAR_LINE)
  }
  return {
    show(line) {
      if (now() - shown < every) return
      shown = now()
      // a line that fills the last column would begin the next one on some terminals
      const columns = err.columns - 1
      const text = [...line(columns)].slice(0, columns).join('')
      err.write(err.isTerminal ? `${CLEAR_LINE}${text}` : `${text}\n`)
    },
    clear,
    say(sentence) {
      clear()
      err.write(`${wrapText(sentence, err.columns)}\n`)
    },
  }
}
