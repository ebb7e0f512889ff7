/** Progress of what is no simulation: so many of so many, on a terminal alone. */
import type { Shell } from './shell.ts'

const CLEAR_LINE = '\r\u001b[2K'

/** A line that is renewed, and cleared in the end. */
export function countdown(
  { err }: Pick<Shell, 'err'>,
  what: string,
  total: number,
): { readonly at: (done: number) => void; readonly end: () => void } {
  const show = (text: string): void => {
    if (err.isTerminal) err.write(`${CLEAR_LINE}${text.slice(0, err.columns - 1)}`)
  }
  return { at: (done) => show(`${what}: ${done} of ${total}`), end: () => show('') }
}
