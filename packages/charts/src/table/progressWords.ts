/** How far a study has come, in one line. */
import { formatDuration, formatNumber } from './format.ts'
import { visibleLine } from '../draw/visibleText.ts'

/** How far a study has come. */
export interface RunsDone {
  readonly done: number
  readonly total: number
  /** the total will not grow. Default: true */
  readonly settled?: boolean
  /** of those done: how many came from a store */
  readonly recalled?: number
  /** half-width of the widest interval of a mean, over that mean; null: not known yet */
  readonly precision?: number | null
  /** number of carriers that makes most so far */
  readonly leading?: number | null
}

/** from this share of the runs on, and after so many seconds, the time left is more than a guess */
const KNOWN_SHARE = 0.1
const KNOWN_SECONDS = 2

/**
 * What is being decided, how far, how precise so far, and how long still: a total that may yet grow is not told, nor the time left of a guess. What does not
 * fit is left out, the least important first.
 *
 * @param what     in a few words
 * @param seconds  since the start
 * @param columns  that the line may take
 * @example progressWords('mean output', { done: 50, total: 200, precision: 0.012 }, 2, 80) // => 'mean output: 50 of 200 runs, means ± 1.2 %, 6 s left'
 */
export function progressWords(what: string, runs: RunsDone, seconds: number, columns: number): string {
  const { done, total, settled = true, precision, leading } = runs
  const count = settled
    ? `${formatNumber(done, 0)} of ${formatNumber(total, 0)} runs`
    : `${formatNumber(done, 0)} ${done === 1 ? 'run' : 'runs'}`
  const most = leading == null ? [] : [`most with ${leading}`]
  const known = precision == null ? [] : [`means ± ${(precision * 100).toFixed(1)} %`]
  const left = secondsLeft(runs, seconds)
  const time = left === null ? [] : [`${formatDuration(left)} left`]
  const head = `${visibleLine(what)}: ${count}`
  const lines = [
    [head, ...most, ...known, ...time],
    [head, ...most, ...time],
    [head, ...time],
  ].map((parts) => parts.join(', '))
  return lines.find((line) => [...line].length <= columns) ?? cut(head, columns)
}

/** null: not known */
function secondsLeft({ done, total, settled = true, recalled = 0 }: RunsDone, seconds: number): number | null {
  const run = done - recalled
  if (!settled || done >= total || run <= 0 || seconds < KNOWN_SECONDS || run < KNOWN_SHARE * (total - recalled)) return null
  return Math.ceil((seconds / run) * (total - done))
}

function cut(line: string, columns: number): string {
  const signs = [...line]
  return signs.length <= columns ? line : `${signs.slice(0, columns - 1).join('')}…`
}
