/** Real weeks beside the forecast of each. */
import type { Mark } from '../drawing/drawing.ts'
import { planRule } from '../drawing/planRule.ts'
import type { Figure } from '../draw/figure.ts'
import { formatNumber } from '../table/format.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'
import { weekAxis } from './weekAxis.ts'

/** A week that was counted, beside what the forecast expects of so many shifts. */
export interface CountedWeek {
  readonly name: string
  readonly units: number
  readonly shifts: number
  readonly expected: number
  /** nine of ten such weeks lie between */
  readonly low: number
  readonly high: number
  readonly side: 'below' | 'within' | 'above'
}

/** more weeks have no room for their names */
const NAMED_MAX = 10

/**
 * A dot for each week, units a shift, on the band in which nine of ten weeks of so many shifts lie.
 *
 * @param weeks  at least one
 * @throws RangeError  if there is none
 * @example countedWeeks([{ name: 'W1', units: 3100, shifts: 10, expected: 3300, low: 3250, high: 3350, side: 'below' }], { plan: null }).finding // => 'The one week counted lies below its band.'
 */
export function countedWeeks(weeks: readonly CountedWeek[], { plan }: { readonly plan: number | null }): Figure {
  if (weeks.length === 0) throw new RangeError('there is no week to draw')
  const found = finding(weeks)
  return {
    drawing: drawingOf(weeks, plan),
    finding: found,
    alt: `Dots of the units a shift in ${weeks.length} counted week${weeks.length === 1 ? '' : 's'}, on the band of the forecast. ${found}`,
    readLine: `Dots: units counted, a shift. Bars: where nine of ten weeks of so many shifts lie if the forecast holds.${plan === null ? '' : ' Dashed: the plan.'}`,
    table: weekTable(weeks),
  }
}

function finding(weeks: readonly CountedWeek[]): string {
  const of = (side: CountedWeek['side']): number => weeks.filter((week) => week.side === side).length
  if (weeks.length === 1) return `The one week counted lies ${weeks[0]!.side} its band.`
  const [below, above] = [of('below'), of('above')]
  const lies = (count: number): string => (count === weeks.length ? `all ${count} lie` : `${count} ${count === 1 ? 'lies' : 'lie'}`)
  const parts = [...(below === 0 ? [] : [`${lies(below)} below`]), ...(above === 0 ? [] : [`${lies(above)} above`])]
  return parts.length === 0
    ? `All ${weeks.length} weeks counted lie within their band.`
    : `Of ${weeks.length} weeks counted ${parts.join(' and ')} the band, in which nine of ten lie if the forecast holds.`
}

function drawingOf(weeks: readonly CountedWeek[], plan: number | null): Figure['drawing'] {
  const each = weeks.map(({ units, shifts, low, high, ...week }) => ({
    ...week,
    made: units / shifts,
    low: low / shifts,
    high: high / shifts,
  }))
  const all = [...each.flatMap(({ made, low, high }) => [made, low, high]), ...(plan === null ? [] : [plan])]
  const every = Math.ceil(weeks.length / NAMED_MAX)
  return {
    heightPixels: 240,
    across: {
      from: 0.5,
      to: weeks.length + 0.5,
      title: 'Week',
      ticks: weeks.flatMap(({ name }, index) =>
        index % every === 0 ? [{ at: index + 1, text: name.length > 8 ? `${name.slice(0, 7)}…` : name }] : [],
      ),
    },
    up: weekAxis(all, 'Units a shift'),
    marks: [
      ...planRule(plan),
      ...each.flatMap(({ name, made, low, high, side }, index): Mark[] => {
        const x = index + 1
        const tip = `${name}: ${formatNumber(made, 0)} a shift, forecast ${formatNumber(low, 0)} to ${formatNumber(high, 0)}`
        return [
          { mark: 'rule', x: [x, x], y: [low, high], ink: 'whisker', ends: 5, tip },
          { mark: 'dot', x, y: made, ink: side === 'within' ? 'dot' : 'chosenDot', radius: side === 'within' ? 4 : 5, tip },
        ]
      }),
    ],
    rightPixels: 14,
  }
}

function weekTable(weeks: readonly CountedWeek[]): Table {
  return tableOf<CountedWeek>({
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
        text: ({ low, high }) => (low === high ? formatNumber(low, 0) : `${formatNumber(low, 0)} to ${formatNumber(high, 0)}`),
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
