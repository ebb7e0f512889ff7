/** From which state the judged stretch starts: three questions with three designs, told apart by the scenario's calendar. */
import { formatDuration } from '@loopwright/charts'
import type { Scenario } from '@loopwright/scenario'
import { startQuestion } from '@loopwright/study'

/** One sentence: which of the questions is answered, and by what design. */
export function startSentence({ line, calendar }: Pick<Scenario, 'line' | 'calendar'>): string {
  const warmup = formatDuration(line.window.warmupSeconds)
  switch (startQuestion(line.window, calendar !== null)) {
    case 'shift from empty':
      return `The question is a ${calendar === null ? 'stretch' : 'shift'} that starts with an empty line: nothing is cut away, filling the line is part of the answer.`
    case 'shift from yesterday':
      return `The question is a shift that starts from the state the one before left behind: the ${warmup} before it are simulated and not counted.`
    case 'steady state':
      return `The question is production that goes on and on: the first ${warmup} are cut away as warm-up.`
  }
}

/** What is too short, and the length that would do; null where the window is long enough, or is a shift, whose length is given. */
export function lengthWarning({ line, calendar }: Pick<Scenario, 'line' | 'calendar'>): string | null {
  const { warmupSeconds, endSeconds } = line.window
  if (startQuestion(line.window, calendar !== null) !== 'steady state') return null
  const needed = 10 * warmupSeconds
  if (endSeconds - warmupSeconds >= needed) return null
  return `The judged stretch of ${formatDuration(endSeconds - warmupSeconds)} is short beside its warm-up of ${formatDuration(warmupSeconds)}: what is left of the start may still show. ${formatDuration(needed)} would do (ten times the warm-up). \`loopwright steady\` finds out how long the warm-up is.`
}
