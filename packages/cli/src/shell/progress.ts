/** Progress on standard error: a line at the start, renewed on a terminal and told anew now and then elsewhere, and one at the end. */
import { formatDuration, formatNumber, progressWords, type RunsDone, visibleLine } from '@loopwright/charts/table'
import { renewedLine } from './renewedLine.ts'
import type { Shell } from './shell.ts'
import { wrapText } from './wrapText.ts'

export interface Progress {
  readonly onProgress: (progress: RunsShown) => void
  /** says something that stays: what is known before the end */
  readonly say: (sentence: string) => void
  /** says how it ended */
  readonly end: (partial: boolean) => void
}

export interface RunsShown extends RunsDone {
  /** what is being decided now; default: what was said at first */
  readonly what?: string
}

/**
 * @param what   what is being decided, such as "carriers 5 to 17, 100 replications each, seed 1"
 * @param total  replications to do; 0: that is never known before the end
 */
export function progress(shell: Shell, what: string, total: number): Progress {
  const { err, now } = shell
  const started = now()
  const line = renewedLine(shell)
  let last: RunsShown = { done: 0, total, settled: false }
  /** the total that people have seen; a second one would make them doubt both */
  let seen: number | null = null
  let grew = total === 0
  const settled = (told: RunsShown): boolean => {
    if (told.settled === false || grew) return false
    grew = seen !== null && seen !== told.total
    seen ??= told.total
    return !grew
  }
  err.write(err.isTerminal ? `${visibleLine(what)} …`.slice(0, err.columns - 1) : `${wrapText(visibleLine(what), err.columns)}\n`)
  return {
    onProgress: (told) => {
      last = { ...told, settled: settled(told) }
      line.show((columns) => progressWords(told.what ?? what, last, (now() - started) / 1000, columns))
    },
    say: (sentence) => line.say(visibleLine(sentence)),
    end: (partial) => {
      line.clear()
      const of = last.settled === false ? '' : ` of ${formatNumber(last.total, 0)}`
      const count = partial ? `stopped: ${formatNumber(last.done, 0)}${of}` : `done: ${formatNumber(last.done, 0)}`
      const kept = (last.recalled ?? 0) > 0 ? ` (${formatNumber(last.recalled!, 0)} of them from the store)` : ''
      const noun = (partial && of !== '' ? last.total : last.done) === 1 ? 'replication' : 'replications'
      err.write(`${count} ${noun}${kept} in ${formatDuration((now() - started) / 1000)}\n`)
    },
  }
}
