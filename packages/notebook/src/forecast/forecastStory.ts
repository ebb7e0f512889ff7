/** The story of a forecast, as cells: what may be promised per shift and per week, what it rests on. */
import { capital, formatNumber, formatShare, roundedParts } from '@loopwright/charts/table'
import type { QuantileEstimate } from '@loopwright/stats'
import type { Scenario } from '@loopwright/scenario'
import type { SweepCount } from '@loopwright/study'
import { type CarrierSweepStory, carrierSweepStory, countCells } from '../sweep/carrierSweepStory.ts'
import { unitsSpread } from '@loopwright/charts'
import { chartCell } from '../cells/chartCell.ts'
import type { AnswerCell, AnswerFigure, CautionCell, ChartCell, Cell, ProseCell, SureCell, TableCell } from '../cells/cell.ts'
import { proseCell, sectionCell, tableCell } from '../cells/cell.ts'
import { standingCells } from '../study/standing.ts'
import { countFigures } from '../sweep/answerFigures.ts'
import { isFixed, oneCountSentences } from '../sweep/answerWords.ts'
import { type Period, period } from '../sweep/period.ts'
import type { Tale } from '../cells/tale.ts'
import { controlSentence } from '../words/controlWords.ts'
import { counted } from '../words/countedWords.ts'
import { intervalCaution } from '../words/intervalWords.ts'
import { FEW, planSentence, planTone, toned } from '../words/planWords.ts'
import { questionFor } from '../words/questionWords.ts'
import { startSentence } from '../words/startWords.ts'
import type { StoryOptions } from '../words/storyOptions.ts'
import type { Forecast, Spread } from './forecast.ts'
import { type ForecastResult, hasWeeks } from './forecastOf.ts'
import { forecastTable, minutes, overtimeTable } from './forecastTables.ts'
import { toldForecast } from './toldForecast.ts'
import { weekWords } from './weeks.ts'

/** Parts of a sweep's story that also tell of one count. */
type Parts = Pick<
  CarrierSweepStory,
  'limits' | 'stations' | 'plan' | 'occupancy' | 'byHour' | 'distribution' | 'stops' | 'units' | 'assumptions' | 'cautions' | 'live'
>

/** The tale of a forecast, and its parts by name. */
export interface ForecastStory extends Parts, Tale {
  readonly answer: AnswerCell
  readonly sure: SureCell
  readonly warnings: readonly CautionCell[]
  /** P10, P50 and P90 per net hour, shift and week, in words */
  readonly table: TableCell
  /** how much simulated weeks differ, drawn; null: there are none to tell of */
  readonly weeks: ChartCell | null
  /** P10, P50 and P90 of shifts, then of weeks, each with what it means and how well it is known */
  readonly spread: ProseCell
  /** expected, and in a bad shift; null without a plan, with too few shifts, or where none is needed */
  readonly overtime: TableCell | null
}

/**
 * The tale of a forecast: what may be promised per shift and per week, and the overtime that the plan takes.
 *
 * @example forecastStory(scenario, forecastOf(scenario, await sweepCarriers(scenario.line, { counts: [4], replications: 12 }, { seed: '1', workers: 0 }), 10), { scenarioFile: 'ring.yaml' }).question // => 'What does the ring make?'
 */
export function forecastStory(scenario: Scenario, of: ForecastResult, options: StoryOptions): ForecastStory {
  const words = period(scenario)
  const result = toldForecast(of, options.plain)
  const { warnings, sweep: _, ...story } = carrierSweepStory(scenario, of.sweep, options)
  const { limits, stations, plan, occupancy, byHour, distribution, stops, units, assumptions, cautions, live } = story
  const count = result.sweep.counts[0]!
  const tells = !isFixed(count) && count.gridlocks === 0
  const parts = {
    answer: {
      kind: 'answer',
      id: 'answer',
      sentences: forecastSentences(result, words),
      figures: forecastFigures(result, words),
      ...toned(planTone(result.shift.planVerdict)),
    } satisfies AnswerCell,
    warnings,
    table: { ...tableCell('forecast', forecastTable(result, words)), pageOnly: count.gridlocks > 0 },
    sure: { kind: 'sure', id: 'sure', sentences: [...sureSentences(result, words), startSentence(scenario)] } satisfies SureCell,
    spread: proseCell(
      'promise',
      ...(tells ? [spreadSentence(words.one, words.many, result.shift)] : []),
      ...(tells && hasWeeks(result)
        ? [spreadSentence(words.one === 'shift' ? 'week' : `row of ${result.shiftsPerWeek} windows`, weekMany(words), result.week)]
        : []),
    ),
    weeks: weekChart(result, words),
    overtime:
      result.overtime === null || result.overtime.mean.mean === 0 || count.gridlocks + count.outOfProducts > 0
        ? null
        : tableCell('overtime', overtimeTable(result, words)),
    limits,
    stations,
    plan,
    occupancy,
    byHour,
    distribution: { ...distribution, lead: true },
    stops,
    units,
    assumptions,
    cautions,
    live,
  }
  return { ...parts, question: questionFor('output', scenario, words.line), cells: cellsOf(parts) }
}

function cellsOf(story: Omit<ForecastStory, 'question' | 'cells'>): readonly Cell[] {
  const { answer, warnings, table, spread, overtime, sure, distribution, units } = story
  return [
    answer,
    ...warnings,
    sectionCell('section-promise', 'Units per hour, shift and week'),
    table,
    ...(spread.markdown === '' ? [] : [spread]),
    ...(overtime === null ? [] : [overtime]),
    sure,
    ...(story.limits === null ? [] : [story.limits]),
    distribution,
    ...(story.weeks === null ? [] : [story.weeks]),
    sectionCell('section-reasons', 'What it rests on'),
    ...countCells(story).filter((cell) => cell !== distribution),
    units,
    ...standingCells(story),
  ]
}

/** What may be said aloud: the plan, a shift, overtime, a week. */
function forecastSentences(result: ForecastResult, words: Period): string[] {
  const { shift, week, shiftsPerWeek, overtime, sweep } = result
  const count = sweep.counts[0]!
  if (shift.mean === null) return [`No answer yet: a forecast needs at least 2 simulated ${words.many}.`]
  const fixed = isFixed(count)
  return [
    ...(shift.planVerdict === null ? [] : [planSentence(shift.plan!, shift.planVerdict, words)]),
    ...oneCountSentences({ ...count, planVerdict: null }, words),
    ...(overtime === null || count.gridlocks > 0 ? [] : [overtimeSentence(overtime, count, words)]),
    ...(week.mean === null || !hasWeeks(result) || count.gridlocks > 0
      ? []
      : [
          fixed
            ? `${capital(weekWords(shiftsPerWeek, words))} ${words.one === 'shift' ? 'makes' : 'make'} ${average(week.mean)} units.`
            : `${capital(weekWords(shiftsPerWeek, words))} ${words.one === 'shift' ? 'makes' : 'make'} ${average(week.mean)} units on average; nine of ten such ${weekMany(words)} make at least ${text(week.p10!.point)}.`,
          ...(week.planVerdict === null ? [] : [planSentence(week.plan!, week.planVerdict, { many: weekMany(words) })]),
        ]),
  ]
}

/** Weeks as columns, where there are enough of them and they differ. */
function weekChart(result: ForecastResult, words: Period): ChartCell | null {
  const { week, shiftsPerWeek, netSeconds, sweep } = result
  const count = sweep.counts[0]!
  if (!hasWeeks(result) || words.one !== 'shift' || isFixed(count) || count.gridlocks > 0) return null
  const figure = unitsSpread(
    { carriers: count.carriers, units: week.units, p10: week.p10, meetsPlan: week.meetsPlan },
    { per: 'week', windowSeconds: netSeconds * shiftsPerWeek, plan: week.plan },
  )
  return { ...chartCell('weeks', figure), pageOnly: true }
}

/** What a shift makes, what nine of ten shifts and weeks reach, whether the plan is met. */
function forecastFigures(result: ForecastResult, words: Period): AnswerFigure[] {
  const { shift, week, shiftsPerWeek, sweep } = result
  const count = sweep.counts[0]!
  if (shift.mean === null || count.gridlocks > 0) return []
  const weeks = hasWeeks(result) && week.p10 !== null && !isFixed(count)
  return [
    ...countFigures(count, words),
    ...(weeks
      ? [
          {
            label: `Nine of ten ${weekMany(words)}`,
            value: text(week.p10!.point),
            sure: `units or more in ${counted(shiftsPerWeek, words.one, words.many)}`,
          },
        ]
      : []),
  ]
}

const weekMany = ({ one }: Pick<Period, 'one'>): string => (one === 'shift' ? 'weeks' : 'rows of windows')

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

/** overtime that is told as none */
const A_LITTLE_MINUTES = 0.05

function overtimeSentence(
  { mean, p90 }: NonNullable<Forecast['overtime']>,
  { outOfProducts }: Pick<SweepCount, 'outOfProducts'>,
  { one, many }: Period,
): string {
  if (mean.mean > 0 && outOfProducts > 0) return 'Overtime does not make up what is missing: the list of products has run out.'
  if (mean.mean === 0) return `No overtime was needed in any of the ${many} simulated.`
  const takes = `To make up what is missing takes ${minutes(mean.mean)} min of overtime a ${one}`
  if (mean.halfWidth === 0) return `${takes}.`
  if (p90 === null) return `${takes} on average.`
  return p90.point < A_LITTLE_MINUTES
    ? `${takes} on average; nine of ten ${many} take none.`
    : `${takes} on average; one ${one} in ten takes at least ${minutes(p90.point)} min.`
}

function sureSentences({ shift, week, shiftsPerWeek, sweep }: ForecastResult, words: Period): string[] {
  const { one, many } = words
  if (!sweep.chance) return ['No time, stop or mix is left to chance: one run tells all, and there are no intervals.']
  if (shift.mean === null) return []
  if (sweep.counts[0]!.gridlocks > 0) return []
  if (isFixed(sweep.counts[0]!)) return [`All ${text(shift.mean.n)} ${many} simulated make the same: chance does not reach this number.`]
  return [
    `The average per ${one} is known to ± ${half(shift.mean)} (${formatShare(shift.mean.level)}); more simulated ${many} narrow this, not how much ${many} differ.${controlSentence(sweep.counts[0]!, words)}${intervalCaution(shift.mean)}`,
    ...(shiftsPerWeek === 1 || (one !== 'shift' && week.units.length < FEW)
      ? []
      : week.units.length < FEW
        ? [
            `Nothing is said of weeks: ${text(shift.units.length)} simulated ${many} make ${counted(week.units.length, 'week')} of ${shiftsPerWeek}, and a forecast of weeks takes ${FEW} or more.`,
          ]
        : [
            `${text(week.units.length)} ${weekMany(words)} were made of ${text(shift.units.length)} simulated ${many}, ${shiftsPerWeek} added up for each, every one used once.`,
          ]),
  ]
}

const text = (value: number): string => formatNumber(value, 0)
/** Rounded as in the table, by its interval. */
const average = ({ mean, halfWidth }: NonNullable<Spread['mean']>): string => roundedParts(mean, halfWidth).value
const half = ({ mean, halfWidth }: NonNullable<Spread['mean']>): string => roundedParts(mean, halfWidth).half ?? '0'
