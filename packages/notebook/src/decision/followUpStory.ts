/** The story of a follow-up, as cells: real weeks beside the forecast, stations beside the model, what to measure again, and whether the promise still stands. */
import { formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import type { FollowUpResult, JudgedWeek, StationDeviation } from '@loopwright/decide'
import type { Recalibration } from '@loopwright/study'
import type { BinomialEstimate } from '@loopwright/stats'
import { type AnswerCell, type AnswerFigure, proseCell, type SureCell, type TableCell, tableCell } from '../cells/cell.ts'
import { counted } from '../words/countedWords.ts'
import type { Tale } from '../cells/tale.ts'
import { USE } from '../sweep/cautions.ts'
import { NOT_KNOWN } from '../sweep/countWords.ts'

/** Real weeks, stations, and the line with what was learned put in. */
export interface FollowUpRuns {
  readonly kind: 'follow-up'
  /** of the alternative */
  readonly name: string
  readonly result: FollowUpResult
  /** largest deviation first; null: no station was measured */
  readonly stations: readonly StationDeviation[] | null
  /** factor on all work that gives the counts; null: stations were measured, and theirs are put in */
  readonly factor: Recalibration | null
  /** the recalibrated line; null: nothing needed it */
  readonly recalibrated: {
    readonly units: readonly number[]
    readonly meetsPlan: BinomialEstimate | null
  } | null
  /** units per shift; null: no plan */
  readonly plan: number | null
  /** where the recalibrated scenario was written; null: nowhere */
  readonly written: string | null
}

/** The tale of a follow-up, and its parts by name. */
export interface FollowUpStory extends Tale {
  readonly answer: AnswerCell
  readonly weeks: TableCell
  /** null: no station was measured */
  readonly stations: TableCell | null
  readonly sure: SureCell
}

/**
 * The tale of real weeks against the forecast.
 *
 * @example followUpStory({ kind: 'follow-up', name: 'loop', result: followUp([], [328, 330, 332, 329, 331, 330, 327, 333, 330, 330], '1'), stations: null, factor: null, recalibrated: null, plan: 320, written: null }).question // => 'Does the promise of “loop” still stand?'
 */
export function followUpStory(runs: FollowUpRuns): FollowUpStory {
  const answer: AnswerCell = {
    kind: 'answer',
    id: 'followup-answer',
    sentences: answerSentences(runs),
    figures: followUpFigures(runs.result),
  }
  const weeks = tableCell('followup-weeks', weekTable(runs.result))
  const stations = runs.stations === null ? null : tableCell('followup-stations', stationTable(runs.stations))
  const sure: SureCell = { kind: 'sure', id: 'followup-sure', sentences: sureSentences(runs) }
  return {
    answer,
    weeks,
    stations,
    sure,
    question: `Does the promise of “${runs.name}” still stand?`,
    cells: [
      answer,
      weeks,
      ...(stations === null ? [] : [stations]),
      sure,
      { ...proseCell('section-cautions', '## Cautions'), pageOnly: true },
      USE,
    ],
  }
}

const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length

function followUpFigures({ state, realMean, forecastMean, weeks }: FollowUpResult): AnswerFigure[] {
  return [
    { label: 'The promise', value: state, sure: '' },
    { label: 'Units a shift', value: formatNumber(realMean, 0), sure: `counted in ${counted(weeks.length, 'week')}` },
    { label: 'Forecast', value: formatNumber(forecastMean, 0), sure: 'units a shift' },
  ]
}

function answerSentences({ result, stations, factor, recalibrated, plan, written }: FollowUpRuns): string[] {
  const { state, realMean, forecastMean, differenceShare, weeks, chance } = result
  const many = counted(weeks.length, 'week')
  const side = differenceShare < 0 ? 'below' : 'above'
  const gap = `${formatNumber(realMean, 0)} units a shift in ${many}, ${formatShare(Math.abs(differenceShare))} ${side} the forecast of ${formatNumber(forecastMean, 0)}`
  const odds = chance < 0.0005 ? 'less than 1 in 2 000' : formatShare(chance)
  const first = {
    'still stands': `The promise still stands: ${gap}.`,
    'in doubt': `The promise is in doubt: ${gap}; if the forecast holds, weeks so low or lower have a chance of ${odds}.`,
    'no longer stands': `The promise no longer stands: ${gap}; if the forecast holds, weeks so low or lower have a chance of ${odds}.`,
    'too few weeks': `Too few weeks to say: ${gap}.`,
  }[state]
  const again = (stations ?? []).filter(({ differs }) => differs)
  const measured =
    stations === null
      ? []
      : again.length === 0
        ? ['No station that was measured works at another pace than in the model.']
        : [
            `Measure again first: ${again
              .slice(0, 3)
              .map(
                ({ station, ratio, cyclesFor5 }) =>
                  `${station} (work ${formatShare(Math.abs(ratio - 1))} ${ratio > 1 ? 'longer' : 'shorter'} than in the model, ${formatNumber(cyclesFor5, 0)} cycles for ± 5 %)`,
              )
              .join(', ')}.`,
          ]
  const scaled =
    factor === null
      ? []
      : factor.found
        ? [
            `With all work ${formatShare(Math.abs(factor.factor - 1))} ${factor.factor > 1 ? 'longer' : 'shorter'} the model makes what was counted: measure the constraint and the stops before believing that all of it is work.`,
          ]
        : ['No factor on the work alone gives what was counted: look for stops, missing products or another mix.']
  const now =
    recalibrated === null
      ? []
      : [
          `The recalibrated line makes ${formatNumber(mean(recalibrated.units), 0)} units a shift${
            plan === null || recalibrated.meetsPlan === null
              ? ''
              : `, and meets the plan of ${formatNumber(plan, 0)} in ${formatShare(recalibrated.meetsPlan.share)} of shifts (${formatShare(recalibrated.meetsPlan.low)} to ${formatShare(recalibrated.meetsPlan.high)})`
          }.`,
        ]
  return [first, ...measured, ...scaled, ...now, ...(written === null ? [] : [`The recalibrated scenario is written to ${written}.`])]
}

function weekTable({ weeks }: FollowUpResult): Table {
  return tableOf<JudgedWeek>({
    caption: 'Weeks beside the forecast',
    columns: [
      wordColumn('Week', 'week', 'its name', ({ name }) => name),
      { head: 'Shifts', text: ({ shifts }) => formatNumber(shifts, 0), data: [['shifts', 'worked', ({ shifts }) => shifts]] },
      { head: 'Units', text: ({ units }) => formatNumber(units, 0), data: [['units', 'counted', ({ units }) => units]] },
      {
        head: 'Forecast',
        text: ({ expected }) => formatNumber(expected, 0),
        data: [['forecast', 'units expected of so many shifts', ({ expected }) => expected]],
      },
      {
        head: 'Nine of ten\nweeks',
        text: ({ low, high }) => `${formatNumber(low, 0)} to ${formatNumber(high, 0)}`,
        data: [
          ['low', 'one of twenty weeks makes less', ({ low }) => low],
          ['high', 'one of twenty weeks makes more', ({ high }) => high],
        ],
      },
      wordColumn('Side', 'side', 'below, within or above', ({ side }) => side),
    ],
    rows: weeks,
    marked: ({ side }) => side === 'below',
    tone: ({ side }) => (side === 'below' ? 'warning' : undefined),
    note: 'One week in ten lies outside although the forecast holds: judge the weeks together.',
  })
}

function stationTable(stations: readonly StationDeviation[]): Table {
  return tableOf<StationDeviation>({
    caption: 'Stations beside the model, work a unit',
    columns: [
      wordColumn('Station', 'station', 'name', ({ station }) => station),
      {
        head: 'Measured, s',
        text: ({ seconds }) => formatNumber(seconds, 1),
        data: [['measured_s', 'mean seconds a unit', ({ seconds }) => seconds]],
      },
      {
        head: 'Model, s',
        text: ({ modelSeconds }) => formatNumber(modelSeconds, 1),
        data: [['model_s', 'mean seconds a unit', ({ modelSeconds }) => modelSeconds]],
      },
      { head: 'Cycles', text: ({ n }) => formatNumber(n, 0), data: [['cycles', 'measured', ({ n }) => n]] },
      {
        head: 'Standard\nerrors',
        text: ({ standardErrors }) => (standardErrors === null ? NOT_KNOWN : formatNumber(standardErrors, 1)),
        data: [['standard_errors', 'of the measured mean; empty: no spread', ({ standardErrors }) => standardErrors]],
      },
      {
        head: 'Cycles\nfor ± 5 %',
        text: ({ cyclesFor5 }) => formatNumber(cyclesFor5, 0),
        data: [['cycles_for_5', '(1.96 · sd/(0.05 · mean))²', ({ cyclesFor5 }) => cyclesFor5]],
      },
      wordColumn('Differs', 'differs', 'more than 3 standard errors and 2 %', ({ differs }) => (differs ? 'yes' : 'not shown')),
    ],
    rows: stations,
    marked: ({ differs }) => differs,
  })
}

function sureSentences({ result, stations }: FollowUpRuns): string[] {
  return [
    'A forecast that holds is called "in doubt" by 1 in 20 such looks and "no longer stands" by 1 in 200; who looks every week sees one of them sooner or later.',
    ...(stations === null ? ['No station was measured: weeks say that something differs, not what.'] : []),
    ...(result.weeks.length < 4 ? ['With so few weeks only a large difference shows.'] : []),
  ]
}
