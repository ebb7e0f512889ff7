/** Output in each hour of the window, beside the pace that the plan asks for. */
import type { SweepCount } from '@loopwright/study'
import type { Mark } from '../drawing/drawing.ts'
import type { Figure, WindowWords } from '../draw/figure.ts'
import { formatMinutes, formatNumber } from '../table/format.ts'
import { carriersText, niceStep, windowOf } from '../draw/window.ts'
import { type ColumnOf, type Table, tableOf } from '../table/table.ts'

/** How the chart of output by the hour is told. */
export interface OutputByHourOptions extends WindowWords {
  /** breaks within the window, seconds from its start, see `breaksWithin`. Default: not known; where netSeconds tells that there are some, the pace of the plan is left out */
  readonly breaks?: readonly Pause[]
  /** clock time of the window's start, "14:20"; default: hours are counted from 1 */
  readonly startClock?: string
  /** the most units of an hour that the axis must hold, where several counts share it. Default: those of this count */
  readonly unitsMax?: number
  /** another count, outlined. Default: none */
  readonly ghost?: Pick<SweepCount, 'carriers' | 'outputByHour'>
}

/** A break within the window; seconds. */
export interface Pause {
  readonly startSeconds: number
  readonly lengthSeconds: number
}

/** A count with its hours; without a spread means alone are drawn. */
export type HourlyCount = Pick<SweepCount, 'carriers' | 'outputByHour'> & Partial<Pick<SweepCount, 'hourSpread'>>

interface Hour {
  readonly label: string
  readonly startSeconds: number
  readonly units: number
  /** breaks taken out */
  readonly workedSeconds: number
  readonly fullHour: boolean
  /** units that the plan asks for in this hour; null: no plan */
  readonly pace: number | null
  /** between which units eight of ten windows lie; null: not known */
  readonly spread: SweepCount['hourSpread'][number] | null
}

/**
 * One bar for each hour of the window; the last hour may be a part of one. The plan, spread over the time worked, is a dashed step.
 *
 * @param count     carriers, and mean units by hour
 * @throws RangeError   if the window is not longer than 0 s
 * @example outputByHour({ carriers: 3, outputByHour: [40, 40] }, { windowSeconds: 7200 }).table.rows.length // => 2
 */
export function outputByHour(count: HourlyCount, options: OutputByHourOptions): Figure {
  const { per, windowSeconds, netSeconds, plan: wanted } = windowOf(options)
  const known = options.breaks !== undefined || netSeconds >= windowSeconds
  const plan = known ? wanted : null
  const hours = hoursOf(count, options, plan)
  const found = finding(count.carriers, hours, known, per)
  const alt = `Bars of the mean output in each of ${hours.length} hours of the ${per}. ${found}`
  return {
    drawing: drawingOf(hours, options, per, plan),
    finding: found,
    alt,
    readLine: `Bars: mean units in each hour of the ${per}; lower where a break falls into the hour.${hours.some(({ spread }) => spread !== null) ? ` Upright bars: eight of ten ${per}s, from P10 to P90.` : ''}${plan === null ? '' : ' Dashed: the pace the plan asks for, spread over the time worked.'}${options.breaks === undefined || options.breaks.length === 0 ? '' : ' Shaded: breaks.'}${options.ghost === undefined ? '' : ` Outlined: ${carriersText(options.ghost.carriers)}.`}`,
    table: hourTable(count.carriers, hours, per, known, plan),
  }
}

/**
 * The parts of breaks that fall into a window, counted from its start.
 *
 * @param breaks    seconds from time 0, as the line has them
 * @param window    seconds from time 0
 * @example breaksWithin([{ startSeconds: 90, lengthSeconds: 20 }], { warmupSeconds: 100, endSeconds: 200 }) // => [{ startSeconds: 0, lengthSeconds: 10 }]
 */
export function breaksWithin(
  breaks: readonly Pause[],
  { warmupSeconds, endSeconds }: { readonly warmupSeconds: number; readonly endSeconds: number },
): Pause[] {
  return breaks.flatMap(({ startSeconds, lengthSeconds }) => {
    const from = Math.max(startSeconds, warmupSeconds)
    const to = Math.min(startSeconds + lengthSeconds, endSeconds)
    return to > from ? [{ startSeconds: from - warmupSeconds, lengthSeconds: to - from }] : []
  })
}

/** Seconds of [from, to) outside the breaks. */
function workedSeconds(from: number, to: number, breaks: readonly Pause[]): number {
  return breaks.reduce(
    (left, { startSeconds, lengthSeconds }) =>
      left - Math.max(0, Math.min(to, startSeconds + lengthSeconds) - Math.max(from, startSeconds)),
    to - from,
  )
}

function hoursOf({ outputByHour: units, hourSpread = [] }: HourlyCount, options: OutputByHourOptions, plan: number | null): Hour[] {
  const { windowSeconds, breaks = [], startClock } = options
  const worked = units.map((_, index) => workedSeconds(index * 3600, Math.min(windowSeconds, (index + 1) * 3600), breaks))
  const total = worked.reduce((sum, each) => sum + each, 0)
  return units.map((each, index) => ({
    label: startClock === undefined ? `hour ${index + 1}` : clock(startClock, index),
    startSeconds: index * 3600,
    units: each,
    workedSeconds: worked[index]!,
    fullHour: (index + 1) * 3600 <= windowSeconds,
    pace: plan === null || total === 0 ? null : (plan * worked[index]!) / total,
    spread: hourSpread[index] ?? null,
  }))
}

function clock(start: string, hours: number): string {
  const [hour, minute] = start.split(':') as [string, string]
  return `${String((Number(hour) + hours) % 24).padStart(2, '0')}:${minute}`
}

function drawingOf(hours: readonly Hour[], options: OutputByHourOptions, per: string, plan: number | null): Figure['drawing'] {
  const { startClock, windowSeconds, breaks = [], ghost } = options
  const long = Math.max(windowSeconds / 3600, hours.length === 0 ? 1 : 0)
  const marked = hours.flatMap(({ units, pace, spread }) => [units, pace ?? 0, spread?.p90 ?? 0])
  const most = Math.max(1, options.unitsMax ?? 0, ...marked, ...(ghost?.outputByHour ?? []))
  const step = niceStep(most * 1.08, 5)
  return {
    heightPixels: 220,
    across: {
      from: 0,
      to: long,
      title: startClock === undefined ? `Hour of the ${per}` : 'Clock time',
      ticks: hours.map(({ label }, index) => ({ at: startClock === undefined ? index + 0.5 : index, text: label.replace('hour ', '') })),
    },
    up: { from: 0, to: Math.ceil((most * 1.08) / step) * step, title: 'Units in the hour', grid: true },
    marks: [
      ...breaks.map(
        ({ startSeconds, lengthSeconds }): Mark => ({
          mark: 'area',
          x: [startSeconds / 3600, (startSeconds + lengthSeconds) / 3600],
          y: ['from', 'to'],
          ink: 'pause',
          tip: `break of ${formatMinutes(lengthSeconds)} min`,
        }),
      ),
      ...hours.flatMap((hour, index) => hourMarks(hour, index, windowSeconds, options.breaks !== undefined)),
      ...(ghost?.outputByHour ?? []).map(
        (units, index): Mark => ({ mark: 'rule', x: [index, Math.min(index + 1, long)], y: [units, units], ink: 'ghost' }),
      ),
      ...paceMarks(hours, windowSeconds),
    ],
    rightPixels: plan === null ? 16 : 44,
  }
}

const endOf = ({ fullHour, startSeconds }: Hour, index: number, windowSeconds: number): number =>
  index + (fullHour ? 1 : (windowSeconds - startSeconds) / 3600)

function hourMarks(hour: Hour, index: number, windowSeconds: number, known: boolean): Mark[] {
  const to = endOf(hour, index, windowSeconds)
  const tip = `${hour.label}: ${formatNumber(hour.units, 1)} units in ${formatMinutes(hour.workedSeconds)} min${known ? ' worked' : ''}${hour.spread === null ? '' : `; P10 ${formatNumber(hour.spread.p10, 0)}, P90 ${formatNumber(hour.spread.p90, 0)}`}`
  const [left, right] = [index + 0.06, to - 0.06]
  if (right <= left) return []
  const middle = (index + to) / 2
  return [
    { mark: 'area', x: [left, right], y: [0, hour.units], ink: 'barPale', tip },
    ...(hour.spread === null
      ? []
      : [{ mark: 'rule', x: [middle, middle], y: [hour.spread.p10, hour.spread.p90], ink: 'whisker', ends: 4, tip } satisfies Mark]),
    {
      mark: 'words',
      x: middle,
      y: Math.max(hour.units, hour.pace ?? 0, hour.spread?.p90 ?? 0),
      dy: -4,
      edge: 'bottom',
      align: 'middle',
      text: formatNumber(hour.units, 0),
      ink: 'words',
      room: to - index,
    },
  ]
}

/** The plan's pace in steps, and its name after the last hour. */
function paceMarks(hours: readonly Hour[], windowSeconds: number): Mark[] {
  const steps = hours.flatMap((hour, index): Mark[] =>
    hour.pace === null ? [] : [{ mark: 'rule', x: [index, endOf(hour, index, windowSeconds)], y: [hour.pace, hour.pace], ink: 'plan' }],
  )
  const last = hours.at(-1)
  if (last === undefined || last.pace === null) return steps
  return [...steps, { mark: 'words', x: 'to', y: last.pace, dx: 5, text: ['plan', 'pace'], ink: 'planWords' }]
}

function finding(carriers: number, hours: readonly Hour[], known: boolean, per: string): string {
  const rated = hours
    .filter(({ workedSeconds }) => workedSeconds >= 600)
    .map((hour) => ({ ...hour, rate: (hour.units * 3600) / hour.workedSeconds }))
  if (rated.length === 0) return 'There is no hour with ten minutes of work in it.'
  const worked = rated.reduce((sum, hour) => sum + hour.workedSeconds, 0)
  const mean = (rated.reduce((sum, hour) => sum + hour.units, 0) * 3600) / worked
  const slowest = rated.reduce((low, hour) => (hour.rate < low.rate ? hour : low))
  const first = `With ${carriersText(carriers)} ${formatNumber(mean, 0)} units are made in an hour ${known ? 'worked' : `of the ${per}, breaks included`}`
  if (rated.every(({ rate }) => Math.abs(rate - mean) <= 0.05 * mean))
    return `${first}, and no hour differs by more than 5 %${known ? ' once breaks are taken out' : ''}.`
  return `${first}; slowest is ${slowest.label}, at ${formatNumber(slowest.rate, 0)}.`
}

const rateOf = ({ workedSeconds, units }: Hour): number | null => (workedSeconds === 0 ? null : (units * 3600) / workedSeconds)

const quantileColumn = (name: 'p10' | 'p90', share: string, per: string): ColumnOf<Hour> => ({
  head: name.toUpperCase(),
  text: ({ spread }) => (spread === null ? '–' : formatNumber(spread[name], 0)),
  data: [[name, `units in the hour that ${share} ${per}s reach`, ({ spread }) => spread?.[name] ?? null]],
})

function hourTable(carriers: number, hours: readonly Hour[], per: string, known: boolean, plan: number | null): Table {
  return tableOf<Hour>({
    caption: `Output by hour of the ${per} with ${carriersText(carriers)}`,
    columns: [
      {
        head: 'Hour',
        align: 'left',
        text: ({ label }) => label,
        data: [
          ['hour', 'the hour as it is called, or the clock time at which it begins', ({ label }) => label],
          ['hour_start_s', `start of the hour, seconds from the start of the ${per}`, ({ startSeconds }) => startSeconds],
        ],
      },
      {
        head: known ? 'Worked (min)' : 'Length (min)',
        text: ({ workedSeconds }) => formatMinutes(workedSeconds),
        data: [['worked_s', known ? 'seconds without breaks' : 'seconds, breaks included', ({ workedSeconds }) => workedSeconds]],
      },
      {
        head: 'Mean output (units)',
        text: ({ units }) => formatNumber(units, 1),
        data: [['units_mean', 'mean units made in the hour', ({ units }) => units]],
      },
      ...(hours.some(({ spread }) => spread !== null)
        ? [quantileColumn('p10', 'nine of ten', per), quantileColumn('p90', 'one of ten', per)]
        : []),
      ...(plan === null
        ? []
        : [
            {
              head: 'Plan pace (units)',
              text: ({ pace }: Hour) => formatNumber(pace ?? 0, 1),
              data: [['plan_units', 'units that the plan asks for in the hour', ({ pace }: Hour) => pace] as const],
            },
          ]),
      {
        head: known ? 'Per hour worked (units/h)' : 'Rate (units/h)',
        text: (hour) => (rateOf(hour) === null ? '–' : formatNumber(rateOf(hour)!, 1)),
        data: [['units_per_hour', `units an hour ${known ? 'worked' : 'of time, breaks included'}; empty: no work in it`, rateOf]],
      },
    ],
    rows: hours,
    note: `Means of all simulated ${per}s. ${known ? 'Worked: breaks taken out.' : 'Breaks are not taken out.'}`,
  })
}
