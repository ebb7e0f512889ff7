/** From which state the judged stretch starts: three questions with three designs, told apart by the scenario's calendar. */
import { formatDuration } from '@loopwright/charts/table'
import { startQuestion } from '@loopwright/study'
import type { Scenario } from '@loopwright/scenario'
import { type CautionCell, warningCell } from '../cells/cell.ts'

type Judged = Pick<Scenario, 'calendar'> & { readonly line: Pick<Scenario['line'], 'window'> }

/** One sentence: which of the questions is answered, and by what design. */
export function startSentence({ line, calendar }: Judged): string {
  const warmup = formatDuration(line.window.warmupSeconds)
  const shift = calendar?.shifts === 1 ? 'shift' : 'window'
  const length = formatDuration(line.window.endSeconds - line.window.warmupSeconds)
  const counted = shift === 'shift' ? '' : ` of ${length}`
  switch (startQuestion(line.window, calendar !== null)) {
    case 'shift from empty':
      return `Each ${shift}${counted} starts with an empty line: filling it is part of the answer.`
    case 'shift from yesterday':
      return `Each ${shift}${counted} starts as the ${shift === 'shift' ? 'one' : 'work'} before left the line: the ${warmup} before it are simulated and not counted.`
    case 'steady state':
      return `A window is ${length} of production that goes on and on; the ${warmup} before it are warm-up, simulated and not counted.`
  }
}

/**
 * What is too short, and the length that is enough; none where the window is long enough, or is a shift, whose length is given.
 *
 * @param standsStill  in every run: a longer window would not help
 */
export function lengthWarning({ line, calendar }: Judged, standsStill = false): CautionCell[] {
  const { warmupSeconds, endSeconds } = line.window
  if (standsStill || startQuestion(line.window, calendar !== null) !== 'steady state') return []
  const needed = 10 * warmupSeconds
  const length = endSeconds - warmupSeconds
  if (length >= needed) return []
  return [
    warningCell(
      'length',
      'Short window',
      `${formatDuration(length)} is short beside a warm-up of ${formatDuration(warmupSeconds)}: what is left of the start may still show. ${formatDuration(needed)} is enough (ten times the warm-up). \`loopwright steady\` finds out how long the warm-up has to be.`,
    ),
  ]
}
