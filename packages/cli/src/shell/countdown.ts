/** Progress of what is no simulation: so many of so many. */
import { renewedLine } from './renewedLine.ts'
import type { Shell } from './shell.ts'

/** A line that is renewed, and cleared in the end. */
export function countdown(
  shell: Pick<Shell, 'err' | 'now'>,
  what: string,
  total: number,
): { readonly at: (done: number) => void; readonly end: () => void } {
  const { show, clear } = renewedLine(shell)
  return { at: (done) => show(() => `${what}: ${done} of ${total}`), end: clear }
}
