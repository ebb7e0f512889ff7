/** What a line makes week by week while people learn it. */
import type { Mark } from '../drawing/drawing.ts'
import { planRule } from '../drawing/planRule.ts'
import type { Figure } from '../draw/figure.ts'
import { formatNumber, formatShare } from '../table/format.ts'
import { type Table, tableOf } from '../table/table.ts'
import { weekAxis } from './weekAxis.ts'

/** A week of learning. */
export interface RampUpWeek {
  /** from 1 */
  readonly week: number
  /** mean work over the standard, ≥ 1 */
  readonly factor: number
  /** expected */
  readonly units: number
  /** nine of ten such weeks make at least this */
  readonly low: number
}

/** How the chart is told. */
export interface RampUpOptions {
  /** units of a week by the standard times */
  readonly standard: number
  /** units wanted in a week; null: no plan */
  readonly plan: number | null
}

/** so near to the standard it is reached */
const REACHED = 0.995

/**
 * A dot for each week, with a bar down to what may be promised of it; across, what the standard times make, and the plan.
 *
 * @param weeks  at least one, ascending
 * @throws RangeError  if there is none
 * @example rampUpChart([{ week: 1, factor: 1.2, units: 2800, low: 2700 }, { week: 2, factor: 1, units: 3300, low: 3200 }], { standard: 3300, plan: null }).finding // => 'Week 1 makes 2 800 units, 15 % less than by the standard times; from week 2 on these hold.'
 */
export function rampUpChart(weeks: readonly RampUpWeek[], options: RampUpOptions): Figure {
  if (weeks.length === 0) throw new RangeError('there is no week to draw')
  const found = finding(weeks, options)
  return {
    drawing: drawingOf(weeks, options),
    finding: found,
    alt: `Dots of the units expected in ${weeks.length} weeks while people learn. ${found}`,
    readLine: `Dots: units expected; the bar below each goes down to what nine of ten such weeks make at least. Thin line: a week by the standard times.${options.plan === null ? '' : ' Dashed: the plan.'}`,
    table: rampTable(weeks, options),
  }
}

function finding(weeks: readonly RampUpWeek[], { standard, plan }: RampUpOptions): string {
  const [first] = weeks
  const short = 1 - first!.units / standard
  const full = weeks.find(({ units }) => units >= REACHED * standard)
  const start =
    short < 1 - REACHED
      ? `Week ${first!.week} makes ${formatNumber(first!.units, 0)} units, as many as by the standard times`
      : `Week ${first!.week} makes ${formatNumber(first!.units, 0)} units, ${formatShare(short)} less than by the standard times${full === undefined ? ', which are not reached in the weeks told' : `; from week ${full.week} on these hold`}`
  if (plan === null) return `${start}.`
  const met = weeks.find(({ units }) => units >= plan)
  return `${start}. The plan of ${formatNumber(plan, 0)} a week is ${met === undefined ? 'not met on average in any week told' : `met on average from week ${met.week} on`}.`
}

function drawingOf(weeks: readonly RampUpWeek[], { standard, plan }: RampUpOptions): Figure['drawing'] {
  const all = [...weeks.flatMap(({ units, low }) => [units, low]), standard, ...(plan === null ? [] : [plan])]
  const last = weeks.at(-1)!.week
  return {
    heightPixels: 240,
    across: {
      from: weeks[0]!.week - 0.5,
      to: last + 0.5,
      title: 'Week',
      ticks: weeks.map(({ week }) => ({ at: week, text: String(week) })),
    },
    up: weekAxis(all, 'Units a week'),
    marks: [
      { mark: 'rule', x: ['from', 'to'], y: [standard, standard], ink: 'thin' },
      {
        mark: 'words',
        x: 'to',
        y: standard,
        dx: -4,
        dy: -4,
        align: 'end',
        edge: 'bottom',
        text: 'standard times',
        ink: 'note',
        rim: 'paper',
      },
      ...planRule(plan),
      ...weeks.flatMap(({ week, units, low, factor }): Mark[] => {
        const tip = `Week ${week}: ${formatNumber(units, 0)} expected, ${formatNumber(low, 0)} to promise, work ${formatNumber(factor, 2)} times the standard`
        return [
          { mark: 'rule', x: [week, week], y: [low, units], ink: 'whisker', ends: 4, tip },
          { mark: 'dot', x: week, y: units, ink: 'dot', tip },
        ]
      }),
    ],
    rightPixels: 14,
  }
}

function rampTable(weeks: readonly RampUpWeek[], { plan }: RampUpOptions): Table {
  return tableOf<RampUpWeek>({
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
    rows: weeks,
    marked: ({ units }) => plan !== null && units < plan,
    tone: ({ units }) => (plan !== null && units < plan ? 'warning' : undefined),
    note: `${plan !== null && weeks.some(({ units }) => units < plan) ? 'Marked: below the plan. ' : ''}By a learning curve after Wright and De Jong (the second from memory): start at 1.3 to 1.6 times the standard and level off after 200 to 1 000 cycles is common practice, no source.`,
  })
}
