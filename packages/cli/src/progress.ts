/** Progress on standard error: one line that is renewed on a terminal; elsewhere one line at the start and one at the end. */
import { formatDuration, formatNumber } from '@loopwright/charts'
import type { Shell } from './shell.ts'
import { wrapText } from './wrapText.ts'

/** milliseconds between two renewals */
const EVERY_MS = 100
/** columns that a line may take */
const COLUMNS = 79
const CLEAR_LINE = '\r\u001b[2K'

export interface Progress {
  readonly onProgress: (progress: Told) => void
  /** says something that stays: what is known before the end */
  readonly say: (sentence: string) => void
  /** says how it ended */
  readonly end: (partial: boolean) => void
}

export interface Told {
  readonly done: number
  readonly total: number
  /** of those done: how many came from the store */
  readonly recalled?: number
  readonly precision?: number | null
  /** number of carriers that makes most so far */
  readonly leading?: number | null
  /** what is being decided now; default: what was said at first */
  readonly what?: string
}

/**
 * @param what   what is being decided, such as "carriers 5 to 17, 100 replications each, seed 1"
 * @param total  replications to do
 */
export function progress(shell: Shell, what: string, total: number): Progress {
  const { err, now } = shell
  const started = now()
  let shown = Number.NEGATIVE_INFINITY
  let last: Told = { done: 0, total }
  err.write(err.isTerminal ? progressLine(what, last, 0).slice(0, COLUMNS) : `${what}\n`)
  return {
    onProgress: (told) => {
      last = told
      if (!err.isTerminal || now() - shown < EVERY_MS) return
      shown = now()
      err.write(`${CLEAR_LINE}${progressLine(told.what ?? what, told, (shown - started) / 1000).slice(0, COLUMNS)}`)
    },
    say: (sentence) => err.write(`${err.isTerminal ? CLEAR_LINE : ''}${wrapText(sentence)}\n`),
    end: (partial) => {
      if (err.isTerminal) err.write(CLEAR_LINE)
      const count = partial
        ? `stopped: ${formatNumber(last.done, 0)} of ${formatNumber(last.total, 0)}`
        : `done: ${formatNumber(last.done, 0)}`
      const kept = (last.recalled ?? 0) > 0 ? ` (${formatNumber(last.recalled!, 0)} of them from the store)` : ''
      err.write(`${count} ${last.total === 1 ? 'replication' : 'replications'}${kept} in ${formatDuration((now() - started) / 1000)}\n`)
    },
  }
}

/**
 * One line: what is being decided, how far, how precise so far, how long still.
 *
 * @param seconds  since the start
 * @example progressLine('mean output', { done: 50, total: 200, precision: 0.012 }, 2) // => 'mean output: 50/200, ± 1.2 %, 6 s left'
 */
export function progressLine(what: string, told: Told, seconds: number): string {
  const { done, total, precision, leading, recalled = 0 } = told
  const parts = [`${what}: ${done}/${total}`]
  if (leading != null) parts.push(`most with ${leading}`)
  if (precision != null) parts.push(`± ${(precision * 100).toFixed(1)} %`)
  const run = done - recalled
  if (run > 0 && done < total) parts.push(`${formatDuration(Math.ceil((seconds / run) * (total - done)))} left`)
  return parts.join(', ')
}
