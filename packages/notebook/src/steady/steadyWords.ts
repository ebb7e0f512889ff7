/** What a search for the warm-up tells, in sentences. */
import { capital, formatDuration, formatNumber, roundedParts, type RoundedParts, withHalf } from '@loopwright/charts/table'
import { startQuestion, type SteadyResult } from '@loopwright/study'
import type { Scenario } from '@loopwright/scenario'
import type { AnswerFigure } from '../cells/cell.ts'
import { figureOf } from '../sweep/answerFigures.ts'
import type { LineNoun } from '../sweep/period.ts'
import { counted } from '../words/countedWords.ts'

/** What was found, each number rounded as it stands on the page; null: no warm-up was found. */
export interface SteadyFigures {
  /** at least this is to be discarded */
  readonly cut: string
  /** of steady production, after the cut */
  readonly enough: string
  /** units an hour */
  readonly rate: RoundedParts
  /** on the line, on average */
  readonly products: RoundedParts
}

export function steadyFigures({ cutSeconds, outputPerHour, productsInLine, enoughSeconds }: SteadyResult): SteadyFigures | null {
  if (cutSeconds === null || outputPerHour === null || productsInLine === null || enoughSeconds === null) return null
  return {
    cut: atLeast(cutSeconds),
    enough: atLeast(enoughSeconds - cutSeconds),
    rate: roundedParts(outputPerHour.mean, outputPerHour.halfWidth, 2),
    products: roundedParts(productsInLine.mean, productsInLine.halfWidth, 1),
  }
}

/** The same in large figures. */
export function largeFigures({ cut, enough, rate, products }: SteadyFigures, line: LineNoun): AnswerFigure[] {
  return [
    { label: 'Warm-up to discard', value: cut, sure: '' },
    { label: 'Then enough', value: enough, sure: 'of steady production' },
    figureOf('Units an hour', rate, 'on average'),
    figureOf(`Products on the ${line}`, products, 'on average'),
  ]
}

export function steadySentences(result: SteadyResult, line: LineNoun): string[] {
  const figures = steadyFigures(result)
  if (figures === null) return [`No steady rate is given. ${capital(result.why ?? '')}`]
  const { cut, enough, rate, products } = figures
  return [
    result.cutSeconds === 0
      ? `Nothing needs to be discarded: the start leaves no trace. ${enough} of production is enough.`
      : `Discard ${cut} of warm-up; ${enough} of steady production is then enough.`,
    `From then on the ${line} makes ${withHalf(rate)} units an hour, with ${withHalf(products)} products on it.`,
  ]
}

/** How it was found, and what that means for the scenario's own window. */
export function steadySure(result: SteadyResult, scenario: Pick<Scenario, 'line' | 'calendar'>): string[] {
  const { replications, runSeconds, intervals, intervalSeconds } = result
  const how = `Found in ${counted(replications, 'run')} of ${formatDuration(runSeconds)}, each from an empty line and without breaks. The rule (MSER-5) looks for the cut after which the mean is known best, once for output and once for products in line, in ${formatNumber(intervals, 0)} intervals of ${formatDuration(intervalSeconds)}; the longer cut counts.`
  return [how, ...windowSentence(result, scenario)]
}

function windowSentence(result: SteadyResult, { line, calendar }: Pick<Scenario, 'line' | 'calendar'>): string[] {
  const { cutSeconds, enoughSeconds } = result
  const figures = steadyFigures(result)
  if (figures === null || cutSeconds === null || enoughSeconds === null) return []
  const { warmupSeconds, endSeconds } = line.window
  const before = formatDuration(warmupSeconds)
  switch (startQuestion(line.window, calendar !== null)) {
    case 'shift from empty':
      return [
        'The scenario asks for a stretch that starts with an empty line: there the start is part of the answer, and nothing is to be discarded.',
      ]
    case 'shift from yesterday':
      return [
        warmupSeconds >= cutSeconds
          ? `The scenario counts a shift after ${before} of work, no less than the warm-up: the shift starts from an ordinary state.`
          : `The scenario counts a shift after ${before} of work, while the start shows for ${figures.cut}: judge a later shift.`,
      ]
    case 'steady state':
      if (warmupSeconds < cutSeconds) return [`The scenario discards ${before} only, which is too little: take ${figures.cut}.`]
      if (endSeconds - warmupSeconds < enoughSeconds - cutSeconds)
        return [`The scenario counts ${formatDuration(endSeconds - warmupSeconds)}, which is too short: take ${figures.enough}.`]
      return ['The warm-up and the length of the scenario are long enough.']
  }
}

const MINUTE = 60
const HOUR = 3600

/** A length that is enough when it is kept: rounded up to the minute; from 2 h on to the quarter of an hour, from 10 h on to the hour. */
function atLeast(seconds: number): string {
  const step = seconds < 2 * MINUTE ? 1 : seconds < 2 * HOUR ? MINUTE : seconds < 10 * HOUR ? 15 * MINUTE : HOUR
  return formatDuration(Math.ceil(seconds / step - 1e-9) * step)
}
