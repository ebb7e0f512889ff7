/** What a search for the warm-up tells, in sentences. */
import { formatDuration, formatNumber, formatWithHalfWidth } from '@loopwright/charts'
import type { Scenario } from '@loopwright/scenario'
import { type SteadyResult, startQuestion } from '@loopwright/study'

export function steadySentences(result: SteadyResult): string[] {
  const { cutSeconds, outputPerHour, productsInLine, enoughSeconds } = result
  if (cutSeconds === null || outputPerHour === null || productsInLine === null || enoughSeconds === null)
    return [`No steady state is given. ${result.why}`]
  const start = cutSeconds === 0 ? 'The start leaves no trace' : `The start shows for ${formatDuration(cutSeconds)}`
  return [
    `${start}; from then on the line makes ${formatWithHalfWidth(outputPerHour.mean, outputPerHour.halfWidth, 2)} units an hour, with ${formatWithHalfWidth(productsInLine.mean, productsInLine.halfWidth, 1)} products on the loop.`,
    `A run of ${formatDuration(enoughSeconds)} with the first ${formatDuration(cutSeconds)} cut away would do for production that goes on and on.`,
  ]
}

/** How it was found, and what that means for the scenario's own window. */
export function steadySure(result: SteadyResult, { line, calendar }: Pick<Scenario, 'line' | 'calendar'>): string[] {
  const how = `Found in ${result.replications} runs of ${formatDuration(result.runSeconds)} without breaks, by the rule MSER-5 on output and on products in line, in ${formatNumber(result.intervals, 0)} intervals of ${formatDuration(result.intervalSeconds)}; the larger cut counts.`
  return [how, ...windowSentence(result, { line, calendar })]
}

function windowSentence({ cutSeconds, enoughSeconds }: SteadyResult, { line, calendar }: Pick<Scenario, 'line' | 'calendar'>): string[] {
  if (cutSeconds === null || enoughSeconds === null) return []
  const { warmupSeconds, endSeconds } = line.window
  switch (startQuestion(line.window, calendar !== null)) {
    case 'shift from empty':
      return [
        'The scenario itself asks for a stretch that starts with an empty line: there the start is part of the answer, and nothing is to be cut away.',
      ]
    case 'shift from yesterday':
      return [
        warmupSeconds >= cutSeconds
          ? `The scenario judges a shift after ${formatDuration(warmupSeconds)} of work, longer than the start shows: it starts from an ordinary state.`
          : `The scenario judges a shift after ${formatDuration(warmupSeconds)} of work, while the start shows for ${formatDuration(cutSeconds)}: judge a later shift.`,
      ]
    case 'steady state':
      if (warmupSeconds < cutSeconds)
        return [`The scenario cuts away ${formatDuration(warmupSeconds)} only, too little: take ${formatDuration(cutSeconds)}.`]
      if (endSeconds < enoughSeconds)
        return [`The scenario runs for ${formatDuration(endSeconds)}, too short: ${formatDuration(enoughSeconds)} would do.`]
      return ['The warm-up and the length of the scenario are long enough.']
  }
}
