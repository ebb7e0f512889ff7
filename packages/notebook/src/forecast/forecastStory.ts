/** The story of a forecast, as cells: what may be promised per shift and per week, what it rests on. */
import { formatNumber, formatShare, formatWithHalfWidth, type Table } from '@loopwright/charts'
import type { Scenario } from '@loopwright/scenario'
import type { QuantileEstimate } from '@loopwright/stats'
import type { SweepResult } from '@loopwright/study'
import { type CarrierSweepStory, carrierSweepStory, type SweepStoryOptions } from '../carrierSweepStory.ts'
import { type AnswerCell, type CautionCell, oneView, type TableCell } from '../cell.ts'
import { NOT_KNOWN } from '../sweep/countWords.ts'
import { type Period, period } from '../sweep/period.ts'
import type { Forecast, Spread } from './forecast.ts'

/** A forecast, and the runs that it rests on. */
export interface ForecastResult extends Forecast {
  readonly kind: 'forecast'
  /** of the one count of the scenario */
  readonly sweep: SweepResult
}

/** Parts of a sweep's story that also tell of one count. */
type Parts = Pick<CarrierSweepStory, 'stations' | 'plan' | 'byHour' | 'distribution' | 'stops' | 'assumptions' | 'cautions'>

export interface ForecastStory extends Parts {
  readonly answer: AnswerCell
  readonly warnings: readonly CautionCell[]
  /** P10, P50 and P90 per net hour, shift and week, in words */
  readonly table: TableCell
  /** P10, P50 and P90 of shifts, then of weeks, each with what it means and how well it is known */
  readonly spread: readonly string[]
  /** expected, and in a bad shift; null without a plan, with too few shifts, or where none is needed */
  readonly overtime: TableCell | null
}

/** Fewer shifts or weeks than these promise nothing. */
const FEW = 20

export function forecastStory(scenario: Scenario, result: ForecastResult, options: SweepStoryOptions): ForecastStory {
  const words = period(scenario)
  const { warnings, ...parts } = carrierSweepStory(scenario, result.sweep, options)
  const { stations, plan, byHour, distribution, stops, assumptions, cautions } = parts
  return {
    answer: { kind: 'answer', id: 'answer', sentences: forecastSentences(result, words), sure: sureSentences(result, words) },
    warnings: warnings.filter(({ id }) => id !== 'warning-upper-end'),
    table: { kind: 'table', id: 'forecast-table', where: 'both', views: oneView(forecastTable(result, words)) },
    spread: [spreadSentence(words.one, words.many, result.shift), spreadSentence('week', 'weeks', result.week)],
    overtime:
      result.overtime === null || result.overtime.mean.mean === 0
        ? null
        : { kind: 'table', id: 'forecast-overtime', where: 'both', views: oneView(overtimeTable(result, words)) },
    stations,
    plan,
    byHour,
    distribution,
    stops,
    assumptions,
    cautions,
  }
}

/** What may be said aloud: a shift, the plan, overtime, a week. */
export function forecastSentences(result: ForecastResult, words: Period): string[] {
  const { shift, week, shiftsPerWeek, overtime } = result
  if (shift.mean === null || shift.p10 === null) return ['No answer yet: a forecast needs at least 2 replications.']
  const carriers = result.sweep.counts[0]!.carriers
  const sentences = [
    `With ${carriers} ${carriers === 1 ? 'carrier' : 'carriers'} the line makes ${average(shift.mean)} units ${words.each} on average; nine of ten ${words.many} make at least ${text(shift.p10.point)}.`,
  ]
  if (shift.meetsPlan !== null) sentences.push(planSentence(shift, words.many))
  if (overtime !== null) sentences.push(overtimeSentence(overtime, words))
  if (week.p10 !== null && week.mean !== null) {
    sentences.push(
      `A week of ${shiftsPerWeek} ${words.many} makes ${average(week.mean)} units on average; nine of ten weeks make at least ${text(week.p10.point)}.`,
    )
    if (week.meetsPlan !== null) sentences.push(planSentence(week, 'weeks'))
  }
  return sentences
}

/** How often the plan is met, in what was simulated and as a chance with its interval. */
export function planSentence({ plan, meetsPlan }: Spread, many: string): string {
  const { successes, n, low, high } = meetsPlan!
  const met = `The plan of ${text(plan!)} is met in`
  const simulated = `${text(n)} ${many} simulated`
  if (n < FEW) return `${met} ${successes} of ${simulated}: too few to promise anything.`
  if (successes === n) return `${met} all ${simulated}; the chance is at least ${formatShare(low)}.`
  if (successes === 0) return `${met} none of ${simulated}; the chance is at most ${formatShare(high)}.`
  return `${met} ${successes} of ${simulated} (${formatShare(successes / n)}); the chance is between ${formatShare(low)} and ${formatShare(high)}.`
}

/** "P10 of a shift is 316: nine of ten shifts make as much or more (95 %: 315 to 318)." and so on. */
export function spreadSentence(one: string, many: string, { p10, p50, p90, units }: Spread): string {
  if (p10 === null || p50 === null || p90 === null)
    return `${units.length === 1 ? `One simulated ${one} is` : `${units.length} simulated ${many} are`} too few to say how ${many} spread.`
  return [
    `P10 of a ${one} is ${text(p10.point)} units: nine of ten ${many} make as much or more${limits(p10)}.`,
    `P50 is ${text(p50.point)}: half of them do${limits(p50)}.`,
    `P90 is ${text(p90.point)}: one of ten does${limits(p90)}.`,
  ].join(' ')
}

/** The limits that there are; of too few shifts there is one, or none. */
function limits({ level, low, high }: QuantileEstimate): string {
  if (low === null && high === null) return ''
  const said = low === null ? `at most ${text(high!)}` : high === null ? `at least ${text(low)}` : `${text(low)} to ${text(high)}`
  return ` (known with ${formatShare(level)}: ${said})`
}

function overtimeSentence({ mean, p90 }: NonNullable<Forecast['overtime']>, { one, many }: Period): string {
  if (mean.mean === 0) return `No overtime was needed in any of the ${many} simulated.`
  return `To make up what is missing takes ${minutes(mean.mean)} min of overtime a ${one} on average; one ${one} in ten takes at least ${minutes(p90.point)} min.`
}

function sureSentences({ shift, week, shiftsPerWeek }: ForecastResult, { one, many }: Period): string[] {
  if (shift.mean === null) return []
  const few = shift.mean.n < 10 ? ' Few replications: the interval rests on the normal shape.' : ''
  const weeks =
    week.units.length < FEW
      ? ` ${week.units.length < 2 ? 'That is too few for a forecast of weeks.' : 'Few weeks: their P10 and P90 are rough.'}`
      : ''
  return [
    `The average per ${one} is known to ± ${half(shift.mean)} (${formatShare(shift.mean.level)}); more replications narrow this, not how much ${many} differ.${few}`,
    `${week.units.length === 1 ? '1 week was' : `${week.units.length} weeks were`} made of ${shift.units.length} simulated ${many}, ${shiftsPerWeek} added up for each, every one used once.${weeks}`,
  ]
}

const right = (head: string) => ({ head, align: 'right', pageOnly: false }) as const

function forecastTable({ shift, week, shiftsPerWeek, netSeconds }: ForecastResult, { one }: Period): Table {
  const quantile = (of: Spread, p: 'p10' | 'p50' | 'p90', show: (value: number) => string): string => {
    const found = of[p]
    return found === null ? NOT_KNOWN : show(found.point)
  }
  const perHour = (value: number): string => formatNumber((value / netSeconds) * 3600, 1)
  const line = (name: string, of: Spread, show: (value: number) => string, mean: string): Table['rows'][number] => ({
    cells: [name, mean, quantile(of, 'p10', show), quantile(of, 'p50', show), quantile(of, 'p90', show)],
    marked: false,
  })
  const shown = (of: Spread): string => (of.mean === null ? NOT_KNOWN : formatWithHalfWidth(of.mean.mean, of.mean.halfWidth))
  return {
    caption: 'Units made',
    columns: [
      { head: 'Per', align: 'left', pageOnly: false },
      right('Average'),
      right('P10: nine of\nten better'),
      right('P50: half\nbetter'),
      right('P90: one of\nten better'),
    ],
    rows: [
      line('net hour', shift, perHour, shift.mean === null ? NOT_KNOWN : perHour(shift.mean.mean)),
      { ...line(one, shift, text, shown(shift)), marked: true },
      line(`week of ${shiftsPerWeek} ${one}s`, week, text, shown(week)),
    ],
    note: `Averages with 95 % intervals. The net hour is that of a whole ${one}: its units over its net time; single hours differ more.`,
  }
}

function overtimeTable({ overtime, week, shift }: ForecastResult, { one }: Period): Table {
  const { mean, p90 } = overtime!
  const without = overtime!.minutes.filter((each) => each === 0).length / overtime!.minutes.length
  return {
    caption: `Overtime that the plan of ${text(shift.plan!)} takes, minutes a ${one}`,
    columns: [{ head: '', align: 'left', pageOnly: false }, right('Minutes')],
    rows: [
      { cells: ['On average', minutes(mean.mean)], marked: true },
      { cells: [`In the worst ${one} of ten, at least`, minutes(p90.point)], marked: false },
      {
        cells: [`${one[0]!.toUpperCase()}${one.slice(1)}s without any, of 100`, formatShare(without).replace(/\s*%$/u, '')],
        marked: false,
      },
    ],
    note: `What each ${one} lacks, over the average rate of ${formatNumber(overtime!.unitsPerMinute * 60, 1)} units per net hour; a ${one} that makes more is not set against one that makes less${week.plan === null ? '' : ', not even within a week'}.`,
  }
}

const text = (value: number): string => formatNumber(value, 0)
const minutes = (value: number): string => formatNumber(value, value < 9.95 ? 1 : 0)
/** Rounded as in the table, by its interval. */
const average = ({ mean, halfWidth }: NonNullable<Spread['mean']>): string => formatWithHalfWidth(mean, halfWidth).split(' ± ')[0]!
const half = ({ mean, halfWidth }: NonNullable<Spread['mean']>): string => formatWithHalfWidth(mean, halfWidth).split(' ± ')[1]!
