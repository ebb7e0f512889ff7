/** The story of a follow-up, as cells: real weeks beside the forecast, stations beside the model, what to measure again, and whether the promise still stands. */
import { countedWeeks, workDeviations } from '@loopwright/charts/decision'
import { formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import type { FollowUpResult, StationDeviation, StopDeviation, WaitDeviation } from '@loopwright/decide/acceptance'
import { listWords } from '@loopwright/line'
import type { Recalibration } from '@loopwright/study/trials'
import { type BinomialEstimate, meanOf } from '@loopwright/stats'
import { type AnswerCell, type AnswerFigure, type ChartCell, proseCell, type SureCell, type TableCell, tableCell } from '../cells/cell.ts'
import { openChartCell } from '../cells/chartCell.ts'
import type { Tale } from '../cells/tale.ts'
import { counted } from '../words/countedWords.ts'
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
  /** what costs most minutes more first; null: no stop was counted */
  readonly stops: readonly StopDeviation[] | null
  /** largest difference first; none: no wait was measured */
  readonly waits: readonly WaitDeviation[]
  /** factor on all work that gives the counts; null: nothing needed it, or what was measured is put in */
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
  readonly weeks: ChartCell
  /** null: no station was measured */
  readonly stations: ChartCell | null
  /** null: no stop was counted */
  readonly stops: TableCell | null
  /** null: no wait was measured */
  readonly waits: TableCell | null
  readonly sure: SureCell
}

/**
 * The tale of real weeks against the forecast.
 *
 * @example followUpStory({ kind: 'follow-up', name: 'loop', result: followUp([{ name: 'W1', units: 3300, shifts: 10 }], [328, 330, 332, 329, 331, 330, 327, 333, 330, 330], '1'), stations: null, stops: null, waits: [], factor: null, recalibrated: null, plan: 320, written: null }).question // => 'Does the promise of “loop” still stand?'
 */
export function followUpStory(runs: FollowUpRuns): FollowUpStory {
  const answer: AnswerCell = {
    kind: 'answer',
    id: 'followup-answer',
    sentences: answerSentences(runs),
    figures: followUpFigures(runs.result),
  }
  const weeks = openChartCell('followup-weeks', countedWeeks(runs.result.weeks, { plan: runs.plan }))
  const stations = runs.stations === null ? null : openChartCell('followup-stations', workDeviations(runs.stations))
  const stops = runs.stops === null ? null : tableCell('followup-stops', stopTable(runs.stops))
  const waits = runs.waits.length === 0 ? null : tableCell('followup-waits', waitTable(runs.waits))
  const sure: SureCell = { kind: 'sure', id: 'followup-sure', sentences: sureSentences(runs) }
  return {
    answer,
    weeks,
    stations,
    stops,
    waits,
    sure,
    question: `Does the promise of “${runs.name}” still stand?`,
    cells: [
      answer,
      weeks,
      ...(stations === null ? [] : [stations]),
      ...(stops === null ? [] : [stops]),
      ...(waits === null ? [] : [waits]),
      sure,
      { ...proseCell('section-cautions', '## Cautions'), pageOnly: true },
      USE,
    ],
  }
}

function followUpFigures({ state, realMean, forecastMean, weeks }: FollowUpResult): AnswerFigure[] {
  return [
    { label: 'The promise', value: state, sure: '' },
    { label: 'Units a shift', value: formatNumber(realMean, 0), sure: `counted in ${counted(weeks.length, 'week')}` },
    { label: 'Forecast', value: formatNumber(forecastMean, 0), sure: 'units a shift' },
  ]
}

function answerSentences(runs: FollowUpRuns): string[] {
  const { result, factor, recalibrated, plan, written } = runs
  const { state, realMean, forecastMean, differenceShare, weeks, chance } = result
  const many = counted(weeks.length, 'week')
  const side = differenceShare < 0 ? 'below' : 'above'
  const gap = `${formatNumber(realMean, 0)} units a shift in ${many}, ${formatShare(Math.abs(differenceShare))} ${side} the forecast of ${formatNumber(forecastMean, 0)}`
  const odds = oddsText(chance)
  const first = {
    'still stands': `The promise still stands: ${gap}${result.above ? `; so many or more have a chance of ${oddsText(1 - chance)} if the forecast holds, so that the model is too low` : ''}.`,
    'in doubt': `The promise is in doubt: ${gap}; if the forecast holds, weeks so low or lower have a chance of ${odds}.`,
    'no longer stands': `The promise no longer stands: ${gap}; if the forecast holds, weeks so low or lower have a chance of ${odds}.`,
    'too few weeks': `Too few weeks to say: ${gap}.`,
  }[state]
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
          `The recalibrated line makes ${formatNumber(meanOf(recalibrated.units), 0)} units a shift (counted: ${formatNumber(realMean, 0)})${
            plan === null || recalibrated.meetsPlan === null
              ? ''
              : `, and meets the plan of ${formatNumber(plan, 0)} in ${formatShare(recalibrated.meetsPlan.share)} of shifts (${formatShare(recalibrated.meetsPlan.low)} to ${formatShare(recalibrated.meetsPlan.high)})`
          }.`,
        ]
  return [
    first,
    ...againSentences(runs),
    ...scaled,
    ...now,
    ...(written === null ? [] : [`The recalibrated scenario is written to ${written}.`]),
  ]
}

const oddsText = (chance: number): string => (chance < 0.0005 ? 'less than 1 in 2 000' : formatShare(chance))

/** What was measured and lies off the model, each kind in a sentence: there to measure again first. */
function againSentences({ stations, stops, waits }: FollowUpRuns): string[] {
  const work = (stations ?? []).filter(({ differs }) => differs)
  const few = (stations ?? []).filter(({ differs, n, cyclesFor5 }) => !differs && n < cyclesFor5)
  const stopped = (stops ?? []).filter(({ countDiffers, lengthDiffers }) => countDiffers || lengthDiffers)
  const waiting = waits.filter(({ differs }) => differs)
  const first = (sentence: string, index: number): string => (index === 0 ? `Measure again first: ${sentence}.` : `Then: ${sentence}.`)
  const told = [
    ...(work.length === 0
      ? []
      : [
          listWords(
            work
              .slice(0, NAMED_MAX)
              .map(
                ({ station, ratio, cyclesFor5 }) =>
                  `${station} (work ${formatShare(Math.abs(ratio - 1))} ${ratio > 1 ? 'longer' : 'shorter'} than in the model, ${formatNumber(cyclesFor5, 0)} cycles for ± 5 %)`,
              ),
          ),
        ]),
    ...(stopped.length === 0 ? [] : [listWords(stopped.slice(0, NAMED_MAX).map((stop) => `${stop.stop} (${stopWords(stop)})`))]),
    ...(waiting.length === 0
      ? []
      : [
          listWords(
            waiting.slice(0, NAMED_MAX).map(({ station, state, share, modelShare }) => {
              const more = share > modelShare
              const look = (state === 'blocked') === more ? 'behind it' : 'before it'
              return `${station} (${state} ${formatShare(share)} of the shift, ${formatShare(modelShare)} in the model: look ${look})`
            }),
          ),
        ]),
  ].map(first)
  const measured = stations !== null || stops !== null || waits.length > 0
  const nothing = !measured || told.length > 0 ? [] : ['Nothing that was measured is shown to be otherwise than in the model.']
  const more =
    few.length === 0
      ? []
      : [
          `Too few cycles to say: ${listWords(few.slice(0, NAMED_MAX).map(({ station, n, cyclesFor5 }) => `${station} (${formatNumber(n, 0)} of the ${formatNumber(cyclesFor5, 0)} for ± 5 %)`))}.`,
        ]
  return [...told, ...nothing, ...more]
}

/** more are read in the tables */
const NAMED_MAX = 3

/** "twice as often as in the model, each 30 % longer" */
function stopWords({ countDiffers, countRatio, lengthDiffers, lengthRatio }: StopDeviation): string {
  const often =
    countRatio === null
      ? 'never in the model'
      : countRatio === 0
        ? 'never counted'
        : `${formatNumber(countRatio, 1)} times as often as in the model`
  const long = lengthRatio === null ? '' : `each ${formatShare(Math.abs(lengthRatio - 1))} ${lengthRatio > 1 ? 'longer' : 'shorter'}`
  return [...(countDiffers ? [often] : []), ...(lengthDiffers ? [long] : [])].join(', ')
}

function stopTable(stops: readonly StopDeviation[]): Table {
  const length = (minutes: number | null): string => (minutes === null ? NOT_KNOWN : formatNumber(minutes, 1))
  return tableOf<StopDeviation>({
    caption: 'Stops beside the model',
    columns: [
      wordColumn('Stop', 'stop', 'as the scenario calls it', ({ stop }) => stop),
      { head: 'Counted', text: ({ count }) => formatNumber(count, 0), data: [['counted', 'stops', ({ count }) => count]] },
      {
        head: 'Model, in\nso many shifts',
        text: ({ modelCount }) => formatNumber(modelCount, 1),
        data: [
          ['model_count', 'stops of the model in so many shifts', ({ modelCount }) => modelCount],
          ['shifts', 'in which they were counted', ({ shifts }) => shifts],
        ],
      },
      {
        head: 'Each,\nmin',
        text: ({ minutesEach }) => length(minutesEach),
        data: [['each_min', 'minutes of one; empty: none was counted', ({ minutesEach }) => minutesEach]],
      },
      {
        head: 'Model,\nmin',
        text: ({ modelMinutesEach }) => length(modelMinutesEach),
        data: [['model_each_min', 'minutes of one in the model; empty: it has none', ({ modelMinutesEach }) => modelMinutesEach]],
      },
      wordColumn('Differs', 'differs', 'more than 3 standard errors and a fifth', (stop) => stopWords(stop) || 'not shown'),
    ],
    rows: stops,
    marked: ({ countDiffers, lengthDiffers }) => countDiffers || lengthDiffers,
    note: 'Differs: more than 3 standard errors and a fifth, counts as of a Poisson process, lengths as exponential ones (own rule, no source).',
  })
}

function waitTable(waits: readonly WaitDeviation[]): Table {
  return tableOf<WaitDeviation>({
    caption: 'Waiting beside the model, share of the shift',
    columns: [
      wordColumn('Station', 'station', 'name', ({ station }) => station),
      wordColumn('Is', 'state', 'blocked or starved', ({ state }) => state),
      { head: 'Measured', text: ({ share }) => formatShare(share), data: [['share', 'of the shift, 0 … 1', ({ share }) => share]] },
      {
        head: 'Model',
        text: ({ modelShare }) => formatShare(modelShare),
        data: [['model_share', 'of the shift, 0 … 1', ({ modelShare }) => modelShare]],
      },
      wordColumn('Differs', 'differs', 'more than 3 points', ({ differs }) => (differs ? 'yes' : 'not shown')),
    ],
    rows: waits,
    marked: ({ differs }) => differs,
    note: 'Blocked longer than in the model: what stands behind the station is slower. Starved longer: what stands before it is. Told apart from 3 points on (own rule, no source).',
  })
}

function sureSentences({ result, stations, stops }: FollowUpRuns): string[] {
  return [
    'A forecast that holds is called "in doubt" by 1 in 20 such looks and "no longer stands" by 1 in 200; who looks every week sees one of them sooner or later.',
    ...(stations === null && stops === null ? ['No station and no stop was measured: weeks say that something differs, not what.'] : []),
    ...(result.weeks.length < 4 ? ['With so few weeks only a large difference shows.'] : []),
  ]
}
