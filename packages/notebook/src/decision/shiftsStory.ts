/** The story for management where shifts differ in hours, crew or plan, as cells: what a week makes, and each shift by itself. */
import { rampUpChart } from '@loopwright/charts/decision'
import { formatDuration, formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { listWords } from '@loopwright/line'
import { workingSeconds } from '@loopwright/line/bounds'
import { startQuestion } from '@loopwright/study'
import { type AnswerCell, type ChartCell, proseCell, type ProseCell, type SureCell, type TableCell, tableCell } from '../cells/cell.ts'
import { openChartCell } from '../cells/chartCell.ts'
import type { Tale } from '../cells/tale.ts'
import type { Spread } from '../forecast/forecast.ts'
import { asTightSentence, diagnosisSentences } from '../limits/diagnosisWords.ts'
import { USE } from '../sweep/cautions.ts'
import { period } from '../sweep/period.ts'
import { counted } from '../words/countedWords.ts'
import { FEW, planSentence } from '../words/planWords.ts'
import { startSentence } from '../words/startWords.ts'
import { limitOf, type PromiseRuns, weekUnits } from './promiseFigures.ts'
import { rampSentence } from './promiseStory.ts'
import { mappingTable, quantilesOf, type UnitsRow, unitsTableOf } from './promiseTables.ts'
import { shiftsOf, type ShiftsResult, type ShiftsRuns, weeksEnough } from './shiftsFigures.ts'

/** The tale of shifts that differ, and its parts by name. */
export interface ShiftsStory extends Tale {
  readonly answer: AnswerCell
  /** each shift, a day, a week: nine of ten, half, one of ten */
  readonly table: TableCell
  /** each shift: days, people, net time, takt, plan, overtime, OEE of what limits it */
  readonly shifts: TableCell
  /** null: no learning is told */
  readonly ramp: ChartCell | null
  readonly sure: SureCell
  readonly rests: ProseCell
}

/**
 * The page for management where shifts differ.
 *
 * @example shiftsStory({ name: 'loop', section: promised.section, shifts: [{ ...promised, name: 'early' }, { ...promised, name: 'late' }] }).question // => 'What is promised of “loop”?'
 */
export function shiftsStory(runs: ShiftsRuns): ShiftsStory {
  const { name, section, shifts } = runs
  const result = shiftsOf(runs)
  const { week } = result
  const parts = {
    answer: {
      kind: 'answer',
      id: 'promise-answer',
      sentences: answerSentences(runs, result),
      figures: figuresOf(runs, result),
    } as AnswerCell,
    table: tableCell('promise-units', unitsTable(runs, result)),
    shifts: tableCell('promise-shifts', shiftsTable(runs, result)),
    ramp: rampCell(runs, result),
    sure: {
      kind: 'sure',
      id: 'promise-sure',
      sentences: [
        `The figures come of ${listWords(shifts.map(({ name: shift, forecast }) => counted(forecast.shift.units.length, `simulated ${shift} shift`)))}, each kind by itself; days and weeks are added up from them, each simulated shift used once.`,
        'The line that a shift takes over is that of shifts with its own crew: what another crew leaves on it is not followed.',
        ...(weeksEnough(week)
          ? []
          : [`Nothing is promised of weeks: there are ${counted(week.units.length, 'week')}, and it takes ${FEW} or more.`]),
        ...startSentences(shifts),
        ...(result.ramp.length === 0
          ? []
          : [
              'The ramp-up lies between simulated lines in which people’s work is longer by fixed factors, in straight lines; what people learn is counted over the units of all shifts.',
            ]),
      ],
    } satisfies SureCell,
    rests: proseCell(
      'promise-rests',
      '## What it rests on, and until when it holds',
      `It holds as long as ${section.until}.`,
      `It rests on ${shifts.map(restsOn).join('; ')}; and on times that are taken as exactly known. A change of any of them asks for a new forecast.`,
      'Not in it: absence, suppliers that fail, new products, scrap and rework unless the scenario has them.',
    ),
  }
  const { answer, table, shifts: each, ramp, sure, rests } = parts
  return {
    ...parts,
    question: `What is promised of “${name}”?`,
    cells: [
      answer,
      table,
      each,
      ...(ramp === null ? [] : [ramp]),
      rests,
      sure,
      { ...tableCell('promise-mapping', mappingTable()), pageOnly: true },
      { ...proseCell('section-cautions', '## Cautions'), pageOnly: true },
      USE,
    ],
  }
}

const restsOn = ({ name, crew, scenario, section: { daysPerWeek } }: PromiseRuns): string =>
  `the ${name} shift on ${counted(daysPerWeek, 'day')} a week${crew === null ? '' : ` with ${crew === 0 ? 'nobody' : counted(crew, 'person', 'people')}`} (“${scenario.name}”, ${counted(scenario.line.carriers.count, 'carrier')})`

/** How the shifts start; once where it is the same. */
function startSentences(shifts: readonly PromiseRuns[]): string[] {
  const found = shifts.map(({ scenario }) => startSentence(scenario))
  if (new Set(found).size === 1) return [found[0]!]
  const warmup = shifts.map(({ name, scenario: { line } }) => `${formatDuration(line.window.warmupSeconds)} (${name})`)
  return shifts.every(({ scenario: { line, calendar } }) => startQuestion(line.window, calendar !== null) === 'shift from yesterday')
    ? [`Each shift starts as the one before left the line: the ${listWords(warmup)} before it are simulated and not counted.`]
    : shifts.map(({ name }, index) => `${name}: ${found[index]}`)
}

/** "5 early and 4 late shifts" */
function weekWords(shifts: readonly PromiseRuns[]): string {
  return `${listWords(shifts.map(({ name, section: { daysPerWeek } }) => `${formatNumber(daysPerWeek, 0)} ${name}`))} shifts`
}

function answerSentences(runs: ShiftsRuns, result: ShiftsResult): string[] {
  const { name, section, shifts } = runs
  const { week, overtime, ramp } = result
  if (shifts.some(({ forecast }) => forecast.shift.p10 === null))
    return ['No promise yet: it takes at least 2 simulated shifts of each kind.']
  const low = ({ p10 }: Spread): string => formatNumber(p10!.point, 0)
  const each = shifts.map((shift) => `${low(shift.forecast.shift)} units in nine of ten ${shift.name} shifts`).join(', ')
  const weekly = weeksEnough(week)
  return [
    weekly
      ? `Promised of “${name}”: at least ${low(week)} units in nine of ten weeks of ${weekWords(shifts)}, as long as ${section.until}.`
      : `Promised of “${name}”: at least ${each}, as long as ${section.until}.`,
    ...(weekly ? [`By shift: at least ${each}.`] : []),
    ...(weekly && week.planVerdict !== null ? [planSentence(week.plan!, week.planVerdict, { many: 'weeks' })] : []),
    ...(overtime === null
      ? []
      : overtime === 0 && shifts.every(({ forecast }) => forecast.overtime !== null)
        ? ['No overtime was needed in any of the shifts simulated.']
        : [
            `What shifts lack takes ${formatNumber(overtime, 0)} min of overtime a week on average: ${shifts
              .filter(({ forecast }) => forecast.overtime !== null)
              .map((shift) => `${formatNumber(shift.forecast.overtime!.mean.mean, 1)} min in each ${shift.name} shift`)
              .join(', ')}.`,
          ]),
    ...limitSentences(shifts),
    ...(ramp.length === 0 ? [] : [rampSentence(ramp, standardWeek(shifts))]),
  ]
}

/** What limits each shift; once where it is the same. */
function limitSentences(shifts: readonly PromiseRuns[]): string[] {
  const found = shifts.map((shift) => {
    const limit = shift.forecast.shift.units.some((made) => made > 0) ? limitOf(shift) : null
    if (limit === null) return null
    const words = period(shift.scenario)
    return [diagnosisSentences(limit, shift.scenario.line, words)[0]!, ...asTightSentence(limit, words)].join(' ')
  })
  if (new Set(found).size === 1) return found[0] === null ? [] : [found[0]!]
  return shifts.map(({ name }, index) =>
    found[index] === null ? `The ${name} shift makes nothing.` : found[index].replace('the line', `the ${name} shift`),
  )
}

function figuresOf({ shifts }: ShiftsRuns, { week }: ShiftsResult): AnswerCell['figures'] {
  return [
    ...(weeksEnough(week)
      ? [{ label: `Units a week of ${weekWords(shifts)}`, value: formatNumber(week.p10!.point, 0), sure: 'in nine of ten weeks' }]
      : []),
    ...shifts.flatMap(({ name, forecast: { shift } }) =>
      shift.p10 === null
        ? []
        : [{ label: `Units a shift, ${name}`, value: formatNumber(shift.p10.point, 0), sure: 'in nine of ten shifts' }],
    ),
  ]
}

function unitsTable({ shifts }: ShiftsRuns, { day, week }: ShiftsResult): Table {
  const row = (per: string, of: Spread | null): UnitsRow => ({ per, ...quantilesOf(of), decimals: 0 })
  return unitsTableOf({
    rows: [
      ...shifts.map(({ name, forecast }) => row(`${name} shift`, forecast.shift)),
      row(`day of ${shifts.map(({ name }) => name).join(' + ')}`, day.units.length < FEW ? null : day),
      row(`week of ${weekWords(shifts)}`, weeksEnough(week) ? week : null),
    ],
    marked: ({ per }) => per.startsWith('week'),
    note: 'A day has one shift of each kind. Days and weeks are added up from simulated shifts; quantiles of shifts are never added, and chances never multiplied.',
  })
}

interface ShiftRow {
  readonly runs: PromiseRuns
  readonly result: ShiftsResult['shifts'][number]
}

function shiftsTable({ shifts }: ShiftsRuns, { shifts: results }: ShiftsResult): Table {
  const rows: ShiftRow[] = shifts.map((runs, index) => ({ runs, result: results[index]! }))
  const number = (head: string, name: string, says: string, of: (row: ShiftRow) => number | null, decimals = 0) => ({
    head,
    text: (row: ShiftRow): string => (of(row) === null ? '–' : formatNumber(of(row)!, decimals)),
    data: [[name, says, of] as const],
  })
  const share = (head: string, name: string, says: string, of: (row: ShiftRow) => number | null) => ({
    head,
    text: (row: ShiftRow): string => (of(row) === null ? '–' : formatShare(of(row)!)),
    data: [[name, says, of] as const],
  })
  return tableOf<ShiftRow>({
    caption: 'Each shift',
    columns: [
      wordColumn('Shift', 'shift', 'its name', ({ runs }) => runs.name),
      number('Days\na week', 'days', 'a week', ({ runs }) => runs.section.daysPerWeek),
      number('People', 'people', 'on the shift', ({ runs }) => runs.crew),
      number('Net\nmin', 'net_minutes', 'without breaks', ({ runs }) => workingSeconds(runs.scenario.line) / 60),
      number('Plan', 'plan', 'units wanted', ({ runs }) => runs.scenario.plan?.unitsPerWindow ?? null),
      {
        head: 'Plan met',
        text: ({ runs: { forecast } }) => (forecast.shift.meetsPlan === null ? '–' : formatShare(forecast.shift.meetsPlan.share)),
        data: [['plan_met', 'share of the shifts simulated', ({ runs }) => runs.forecast.shift.meetsPlan?.share ?? null]],
      },
      number('Overtime\nmin', 'overtime', 'minutes that the plan takes, mean', ({ runs }) => runs.forecast.overtime?.mean.mean ?? null, 1),
      share('OEE', 'oee', 'ISO 22400, 0 … 1', ({ result }) => result.constraint?.effectiveness.oee ?? null),
      wordColumn(
        'Limited at',
        'station',
        'the one that limits, or that what limits is at',
        ({ result }) => result.constraint?.station ?? '–',
      ),
      share('Starved', 'starved', 'share of the shift', ({ result }) => result.constraint?.starvedShare ?? null),
      share('Blocked', 'blocked', 'share of the shift', ({ result }) => result.constraint?.blockedShare ?? null),
    ],
    rows,
    note: 'Plan met: of the shifts simulated. Overtime is what the shortfall of each of them takes, averaged afterwards. OEE is that of the station that limits, or that what limits is at.',
  })
}

const standardWeek = (shifts: readonly PromiseRuns[]): number =>
  shifts.reduce((sum, { slower, section }) => sum + weekUnits(slower, 1, section), 0)

function rampCell({ shifts }: ShiftsRuns, { ramp, week }: ShiftsResult): ChartCell | null {
  return ramp.length === 0 ? null : openChartCell('promise-ramp', rampUpChart(ramp, { standard: standardWeek(shifts), plan: week.plan }))
}
