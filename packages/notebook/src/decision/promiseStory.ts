/** The story for management, as cells, on one page: what is promised, what it rests on, and until when it holds. */
import { capital, formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { STATE_TIMES } from '@loopwright/decide'
import { workingSeconds } from '@loopwright/line/bounds'
import { type AnswerCell, type AnswerFigure, proseCell, type ProseCell, type SureCell, type TableCell, tableCell } from '../cells/cell.ts'
import type { Tale } from '../cells/tale.ts'
import { startSentence } from '../words/startWords.ts'
import { USE } from '../sweep/cautions.ts'
import { planSentence } from '../words/planWords.ts'
import { promiseOf, type PromiseResult, type PromiseRuns } from './promiseFigures.ts'

/** The tale for management, and its parts by name. */
export interface PromiseStory extends Tale {
  readonly answer: AnswerCell
  /** hour, shift, day, week: nine of ten, half, one of ten */
  readonly table: TableCell
  readonly pace: TableCell
  /** null: no learning is told */
  readonly ramp: TableCell | null
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
    ramp: result.ramp.length === 0 ? null : tableCell('promise-ramp', rampTable(result)),
    mapping: { ...tableCell('promise-mapping', mappingTable()), pageOnly: true },
    sure: {
      kind: 'sure',
      id: 'promise-sure',
      sentences: [
        `It rests on ${formatNumber(forecast.shift.units.length, 0)} simulated shifts; more of them make the average surer, and do not make shifts more alike.`,
        startSentence(scenario),
        ...(result.ramp.length === 0
          ? []
          : ['The ramp-up lies between simulated lines whose work is longer by fixed factors, in straight lines.']),
      ],
    } satisfies SureCell,
    rests: proseCell(
      'promise-rests',
      '## What it rests on, and until when it holds',
      `It holds as long as ${section.until}.`,
      `It rests on the scenario “${scenario.name}” with ${formatNumber(scenario.line.carriers.count, 0)} carriers${runs.crew === null ? '' : `, ${formatNumber(runs.crew, 0)} people on a shift`}, ${formatNumber(section.shiftsPerDay, 0)} shifts a day on ${formatNumber(section.daysPerWeek, 0)} days, and on times that are taken as exactly known. A change of any of them asks for a new forecast.`,
      'Not in it: absence, suppliers that fail, new products, scrap and rework unless the scenario has them.',
    ),
  }
  const { answer, table, pace, ramp, mapping, sure, rests } = parts
  return {
    ...parts,
    question: `What is promised of “${name}”?`,
    cells: [
      answer,
      table,
      ...(ramp === null ? [] : [ramp]),
      pace,
      rests,
      sure,
      mapping,
      { ...proseCell('section-cautions', '## Cautions'), pageOnly: true },
      USE,
    ],
  }
}

function answerSentences({ name, forecast, section, scenario }: PromiseRuns, { constraint, ramp }: PromiseResult): string[] {
  const { shift, week, overtime } = forecast
  if (shift.p10 === null || shift.p50 === null) return ['No promise yet: it takes at least 2 simulated shifts.']
  const plan = scenario.plan?.unitsPerWindow ?? null
  const weekly =
    week.p10 === null
      ? ''
      : `, and ${formatNumber(week.p10.point, 0)} in nine of ten weeks of ${formatNumber(forecast.shiftsPerWeek, 0)} shifts`
  return [
    `Promised of “${name}”: at least ${formatNumber(shift.p10.point, 0)} units in nine of ten shifts${weekly}, as long as ${section.until}.`,
    `Half of the shifts make ${formatNumber(shift.p50.point, 0)} or more.`,
    ...(shift.planVerdict === null || plan === null ? [] : [planSentence(plan, shift.planVerdict, { many: 'shifts' })]),
    ...(overtime === null
      ? []
      : [
          `What a shift lacks takes ${formatNumber(overtime.mean.mean, 1)} min of overtime on average${overtime.p90 === null ? '' : overtime.p90.point < 0.05 ? ', and none in nine of ten shifts' : `, and ${formatNumber(overtime.p90.point, 1)} min or more in one shift of ten`}.`,
        ]),
    ...(constraint === null
      ? []
      : [
          `${capital(constraint.station)} limits it: it produces ${formatShare(constraint.effectiveness.availability)} of its planned time, is starved ${formatShare(constraint.starvedShare)} and blocked ${formatShare(constraint.blockedShare)} of the shift.`,
        ]),
    ...(ramp.length === 0 ? [] : [rampSentence(ramp)]),
  ]
}

function promiseFigures({ forecast: { shift, week, shiftsPerWeek } }: PromiseRuns): AnswerFigure[] {
  return [
    ...(shift.p10 === null
      ? []
      : [{ label: 'Units a shift, promised', value: formatNumber(shift.p10.point, 0), sure: 'in nine of ten shifts' }]),
    ...(week.p10 === null
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

function rampSentence(ramp: PromiseResult['ramp']): string {
  const [first] = ramp
  const full = ramp.find(({ factor }) => factor < 1.005)
  return `In week 1 expect ${formatNumber(first!.units, 0)} units, since people are learning; ${full === undefined ? 'the standard times are not reached in the weeks told' : `from week ${full.week} on the standard times hold`}.`
}

interface Row {
  readonly per: string
  readonly low: number | null
  readonly mid: number | null
  readonly high: number | null
  readonly decimals: number
}

function unitsTable({ forecast, section }: PromiseRuns): Table {
  const { shift, week, netSeconds } = forecast
  const at = (of: typeof shift, scale: number) => ({
    low: of.p10 === null ? null : of.p10.point * scale,
    mid: of.p50 === null ? null : of.p50.point * scale,
    high: of.p90 === null ? null : of.p90.point * scale,
  })
  const days = daySums(shift.units, section.shiftsPerDay)
  const day = (p: number): number | null =>
    days.length < 10 ? null : days[Math.min(days.length - 1, Math.floor(p * (days.length - 1) + 0.5))]!
  const rows: Row[] = [
    { per: 'net hour, mean of a shift', ...at(shift, 3600 / netSeconds), decimals: 1 },
    { per: 'shift', ...at(shift, 1), decimals: 0 },
    { per: `day of ${section.shiftsPerDay} shifts`, low: day(0.1), mid: day(0.5), high: day(0.9), decimals: 0 },
    { per: `week of ${forecast.shiftsPerWeek} shifts`, ...at(week, 1), decimals: 0 },
  ]
  const column = (head: string, name: 'low' | 'mid' | 'high', says: string) => ({
    head,
    text: ({ decimals, ...row }: Row): string => (row[name] === null ? '–' : formatNumber(row[name], decimals)),
    data: [[name, says, (row: Row): number | null => row[name]] as const],
  })
  return tableOf<Row>({
    caption: 'Units',
    columns: [
      wordColumn('Per', 'per', 'stretch of time', ({ per }) => per),
      column('Nine of ten\nmake more', 'low', 'nine of ten make as much or more (P10)'),
      column('Half make\nmore', 'mid', 'half of them make as much or more (P50)'),
      column('One of ten\nmakes more', 'high', 'one of ten makes as much or more (P90)'),
    ],
    rows,
    marked: ({ per }) => per === 'shift',
    note: 'Days and weeks are added up from simulated shifts, each used once; chances of shifts are never multiplied.',
  })
}

/** Ascending. */
function daySums(units: readonly number[], shiftsPerDay: number): number[] {
  return Array.from({ length: Math.floor(units.length / shiftsPerDay) }, (_, day) =>
    units.slice(day * shiftsPerDay, (day + 1) * shiftsPerDay).reduce((sum, one) => sum + one, 0),
  ).sort((a, b) => a - b)
}

function paceTable({ scenario, section }: PromiseRuns, result: PromiseResult): Table {
  const { constraint } = result
  const net = workingSeconds(scenario.line)
  const rows: (readonly [what: string, text: string, value: number | null])[] = [
    ['Net time of a shift, min', formatNumber(net / 60, 0), net / 60],
    ['Shifts a week', formatNumber(section.daysPerWeek * section.shiftsPerDay, 0), section.daysPerWeek * section.shiftsPerDay],
    ...(result.takt === null ? [] : [['Takt: net time over plan, s', formatNumber(result.takt, 1), result.takt] as const]),
    ...(result.lineEfficiency === null
      ? []
      : [
          [
            'Line efficiency: units over those of the cycle by mean times',
            formatShare(result.lineEfficiency),
            result.lineEfficiency,
          ] as const,
        ]),
    ...(result.balanceLoss === null
      ? []
      : [['Balance loss: share of the stations’ time without work', formatShare(result.balanceLoss), result.balanceLoss] as const]),
    ...(constraint === null
      ? []
      : ([
          [`OEE of ${constraint.station} (ISO 22400)`, formatShare(constraint.effectiveness.oee), constraint.effectiveness.oee],
          ['… availability, APT over PBT', formatShare(constraint.effectiveness.availability), constraint.effectiveness.availability],
          [
            '… effectiveness, PRI · PQ over APT',
            formatShare(Math.min(1, constraint.effectiveness.effectiveness)),
            constraint.effectiveness.effectiveness,
          ],
          ['… quality, GQ over PQ', formatShare(constraint.effectiveness.quality), constraint.effectiveness.quality],
          ['… starved, share of the shift', formatShare(constraint.starvedShare), constraint.starvedShare],
          ['… blocked, share of the shift', formatShare(constraint.blockedShare), constraint.blockedShare],
        ] as const)),
  ]
  return tableOf<(typeof rows)[number]>({
    caption: 'Pace and use',
    columns: [
      wordColumn('What', 'what', 'which figure', ([what]) => what),
      { head: 'Value', text: ([, text]) => text, data: [['value', 'in the unit named; shares 0 … 1', ([, , value]) => value]] },
    ],
    rows,
    note: 'OEE of a station in a loop contains its neighbours: it is told for the constraint alone, beside its starved and blocked shares. Quality counts rejects only where the scenario has an inspection.',
  })
}

function rampTable({ ramp }: PromiseResult): Table {
  return tableOf<PromiseResult['ramp'][number]>({
    caption: 'Ramp-up, week by week',
    columns: [
      { head: 'Week', text: ({ week }) => formatNumber(week, 0), data: [['week', 'from 1', ({ week }) => week]] },
      {
        head: 'Times the\nstandard',
        text: ({ factor }) => formatNumber(factor, 2),
        data: [['factor', 'mean work over standard', ({ factor }) => factor]],
      },
      {
        head: 'Units\nexpected',
        text: ({ units }) => formatNumber(units, 0),
        data: [['units', 'mean', ({ units }) => units]],
        bar: ({ units }) => units,
      },
      {
        head: 'To promise',
        text: ({ low }) => formatNumber(low, 0),
        data: [['low', 'nine of ten weeks at least, as of the line at its standard', ({ low }) => low]],
      },
    ],
    rows: ramp,
    note: 'By a learning curve after Wright and De Jong (the second from memory): start at 1.3 to 1.6 times the standard and level off after 200 to 1 000 cycles is common practice, no source.',
  })
}

function mappingTable(): Table {
  return tableOf<(typeof STATE_TIMES)[number]>({
    caption: 'How states become the times of ISO 22400',
    columns: [
      wordColumn('State here', 'state', 'of a station', ({ states }) => states),
      wordColumn(
        'Element',
        'element',
        'of ISO 22400-2:2014, as cited in a companion specification for machine tools',
        ({ element }) => element,
      ),
    ],
    rows: STATE_TIMES,
  })
}
