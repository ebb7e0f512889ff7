/** The story for management, as cells, on one page: what is promised, what it rests on, and until when it holds. */
import { unitsSpread } from '@loopwright/charts'
import { rampUpChart, timeLosses } from '@loopwright/charts/decision'
import { formatNumber } from '@loopwright/charts/table'
import {
  type AnswerCell,
  type AnswerFigure,
  type ChartCell,
  proseCell,
  type ProseCell,
  type SureCell,
  type TableCell,
  tableCell,
} from '../cells/cell.ts'
import { chartCell, openChartCell } from '../cells/chartCell.ts'
import type { Tale } from '../cells/tale.ts'
import { hasWeeks } from '../forecast/forecastOf.ts'
import { diagnosisSentences } from '../limits/diagnosisWords.ts'
import { period } from '../sweep/period.ts'
import { counted } from '../words/countedWords.ts'
import { startSentence } from '../words/startWords.ts'
import { USE } from '../sweep/cautions.ts'
import { FEW, planSentence } from '../words/planWords.ts'
import { limitOf, promiseOf, type PromiseResult, type PromiseRuns } from './promiseFigures.ts'
import { mappingTable, paceTable, unitsTable } from './promiseTables.ts'

/** The tale for management, and its parts by name. */
export interface PromiseStory extends Tale {
  readonly answer: AnswerCell
  /** hour, shift, day, week: nine of ten, half, one of ten */
  readonly table: TableCell
  readonly pace: TableCell
  /** how much shifts differ, drawn; on the page alone; null: none was simulated */
  readonly spread: ChartCell | null
  /** null: no learning is told */
  readonly ramp: ChartCell | null
  /** where the time of the station that limits goes; null: nothing is made */
  readonly time: ChartCell | null
  readonly mapping: TableCell
  readonly sure: SureCell
  readonly rests: ProseCell
}

/**
 * The page for management.
 *
 * @example promiseStory(promised).question // => 'What is promised of “zoned loop”?'
 */
export function promiseStory(runs: PromiseRuns): PromiseStory {
  const { scenario, name, section, forecast } = runs
  const result = promiseOf(runs)
  const parts = {
    answer: {
      kind: 'answer',
      id: 'promise-answer',
      sentences: answerSentences(runs, result),
      figures: promiseFigures(runs),
    } satisfies AnswerCell,
    table: tableCell('promise-units', unitsTable(runs)),
    pace: tableCell('promise-pace', paceTable(runs, result)),
    spread: spreadCell(runs),
    ramp: rampCell(runs, result),
    time: timeCell(result),
    mapping: { ...tableCell('promise-mapping', mappingTable()), pageOnly: true },
    sure: {
      kind: 'sure',
      id: 'promise-sure',
      sentences: [
        `The figures come of ${counted(forecast.shift.units.length, 'simulated shift')}; more of them make the average surer, and do not make shifts more alike.`,
        ...(hasWeeks(forecast)
          ? []
          : [
              `Nothing is promised of weeks: ${counted(forecast.shift.units.length, 'simulated shift')} make ${counted(forecast.week.units.length, 'week')} of ${formatNumber(forecast.shiftsPerWeek, 0)}, and it takes ${FEW} or more.`,
            ]),
        startSentence(scenario),
        ...(result.ramp.length === 0
          ? []
          : ['The ramp-up lies between simulated lines in which people’s work is longer by fixed factors, in straight lines.']),
      ],
    } satisfies SureCell,
    rests: proseCell(
      'promise-rests',
      '## What it rests on, and until when it holds',
      `It holds as long as ${section.until}.`,
      `It rests on the scenario “${scenario.name}” with ${counted(scenario.line.carriers.count, 'carrier')}, ${shiftWords(runs)}, and on times that are taken as exactly known. A change of any of them asks for a new forecast.`,
      'Not in it: absence, suppliers that fail, new products, scrap and rework unless the scenario has them.',
    ),
  }
  const { answer, table, spread, pace, ramp, time, mapping, sure, rests } = parts
  return {
    ...parts,
    question: `What is promised of “${name}”?`,
    cells: [
      answer,
      ...(spread === null ? [] : [spread]),
      table,
      ...(ramp === null ? [] : [ramp]),
      ...(time === null ? [] : [time]),
      pace,
      rests,
      sure,
      mapping,
      { ...proseCell('section-cautions', '## Cautions'), pageOnly: true },
      USE,
    ],
  }
}

/** People, shifts and days that it is promised for. */
function shiftWords({ crew, section: { shiftsPerDay, daysPerWeek }, scenario }: PromiseRuns): string {
  const people =
    crew === null
      ? ''
      : `${formatNumber(crew, 0)} people on a shift${shiftsPerDay === 1 ? '' : `, ${formatNumber(crew * shiftsPerDay, 0)} on all shifts of a day`}, `
  const alike = shiftsPerDay === 1 ? '' : `, all of them like ${period(scenario).named ?? 'the one simulated'}`
  return `${people}${counted(shiftsPerDay, 'shift')} a day on ${counted(daysPerWeek, 'day')} a week${alike}`
}

function spreadCell({ forecast, scenario }: PromiseRuns): ChartCell | null {
  const count = forecast.sweep.counts[0]!
  if (count.units.length < 2) return null
  const { warmupSeconds, endSeconds } = scenario.line.window
  const window = { per: 'shift', windowSeconds: endSeconds - warmupSeconds, netSeconds: forecast.netSeconds }
  const figure = unitsSpread(count, { ...window, plan: scenario.plan?.unitsPerWindow ?? null })
  return { ...chartCell('promise-spread', figure), pageOnly: true }
}

/** so near to the standard nothing is lost */
const NO_LOSS = 0.995

/** Units of a week by the standard times. */
const standardWeek = ({ forecast, section: { daysPerWeek, shiftsPerDay }, slower }: PromiseRuns): number =>
  (slower[0]?.mean ?? forecast.shift.mean!.mean) * daysPerWeek * shiftsPerDay

function rampCell(runs: PromiseRuns, { ramp }: PromiseResult): ChartCell | null {
  const { section, scenario } = runs
  if (ramp.length === 0) return null
  const shifts = section.daysPerWeek * section.shiftsPerDay
  const plan = scenario.plan === null ? null : scenario.plan.unitsPerWindow * shifts
  return openChartCell('promise-ramp', rampUpChart(ramp, { standard: standardWeek(runs), plan }))
}

function timeCell({ constraint }: PromiseResult): ChartCell | null {
  if (constraint === null || constraint.plannedSeconds <= 0) return null
  const { station, plannedSeconds, losses } = constraint
  return openChartCell('promise-time', timeLosses(losses, { station, planned: plannedSeconds, per: 'shift' }))
}

function answerSentences(runs: PromiseRuns, { ramp }: PromiseResult): string[] {
  const { name, forecast, section, scenario } = runs
  const { shift, week, overtime } = forecast
  if (shift.p10 === null || shift.p50 === null) return ['No promise yet: it takes at least 2 simulated shifts.']
  const plan = scenario.plan?.unitsPerWindow ?? null
  const limit = limitOf(runs)
  const weekly =
    week.p10 === null || !hasWeeks(forecast)
      ? ''
      : `, and ${formatNumber(week.p10.point, 0)} in nine of ten weeks of ${formatNumber(forecast.shiftsPerWeek, 0)} shifts`
  return [
    `Promised of “${name}”: at least ${formatNumber(shift.p10.point, 0)} units in nine of ten shifts${weekly}, as long as ${section.until}.`,
    `Half of the shifts make ${formatNumber(shift.p50.point, 0)} or more.`,
    ...(shift.planVerdict === null || plan === null ? [] : [planSentence(plan, shift.planVerdict, { many: 'shifts' })]),
    ...(overtime === null
      ? []
      : overtime.mean.mean === 0
        ? ['No overtime was needed in any of the shifts simulated.']
        : [
            `What a shift lacks takes ${formatNumber(overtime.mean.mean, 1)} min of overtime on average${overtime.p90 === null ? '' : overtime.p90.point < 0.05 ? ', and none in nine of ten shifts' : `, and ${formatNumber(overtime.p90.point, 1)} min or more in one shift of ten`}.`,
          ]),
    ...(limit === null ? [] : [diagnosisSentences(limit, scenario.line, period(scenario))[0]!]),
    ...(ramp.length === 0 ? [] : [rampSentence(ramp, standardWeek(runs))]),
  ]
}

function promiseFigures({ forecast }: PromiseRuns): AnswerFigure[] {
  const { shift, week, shiftsPerWeek } = forecast
  return [
    ...(shift.p10 === null
      ? []
      : [{ label: 'Units a shift, promised', value: formatNumber(shift.p10.point, 0), sure: 'in nine of ten shifts' }]),
    ...(week.p10 === null || !hasWeeks(forecast)
      ? []
      : [
          {
            label: `Units a week of ${formatNumber(shiftsPerWeek, 0)} shifts`,
            value: formatNumber(week.p10.point, 0),
            sure: 'in nine of ten weeks',
          },
        ]),
  ]
}

/** What the first week of a ramp-up makes, and from when on nothing is lost. */
export function rampSentence(ramp: PromiseResult['ramp'], standard: number): string {
  const [first] = ramp
  if (first!.units >= NO_LOSS * standard) return 'People who are still learning cost no output: what limits the line is not their work.'
  const full = ramp.find(({ factor }) => factor < 1.005)
  return `In week 1 expect ${formatNumber(first!.units, 0)} units, since people are learning; ${full === undefined ? 'the standard times are not reached in the weeks told' : `from week ${full.week} on the standard times hold`}.`
}
