/** Differences from one line, each as a dot with its interval, on one zero line, with what was made before and after. */
import type { Mark } from '../drawing/drawing.ts'
import { rowAxis, rowWords, STEP_PIXELS } from '../drawing/rows.ts'
import { niceStep } from '../draw/window.ts'
import type { Figure } from '../draw/figure.ts'
import { differenceDecimals, formatNumber, formatShare } from '../table/format.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'

/** What one line makes more or less than another. */
export interface DifferenceRow {
  readonly name: string
  /** units per window, mean; below 0: less */
  readonly mean: number
  /** ends of its interval; equal to the mean where nothing is left to chance */
  readonly low: number
  readonly high: number
  /** units per window before and after; null: not known */
  readonly before: number | null
  readonly after: number | null
  /** drawn dark: the one that the answer names. Default: false */
  readonly named?: boolean
}

/** How the chart of differences is told. */
export interface DifferencesOptions {
  /** what one window is called. Default: "window" */
  readonly per?: string
  /** what the rows are set beside: "today’s order" */
  readonly beside: string
  /** of the intervals together, 0 … 1. Default: 0.95 */
  readonly level?: number
}

/** more rows would not be read; the table has all */
const ROWS_MAX = 16

/**
 * A dot with its interval for each row, in the order given; right of the zero line is more.
 *
 * @param rows  at least one
 * @throws RangeError  if there is none
 * @example differences([{ name: 'proposal', mean: -8.2, low: -10.6, high: -5.8, before: 334, after: 326 }], { per: 'shift', beside: '“today”' }).finding // => 'Less than “today”: proposal (−8.2).'
 */
export function differences(rows: readonly DifferenceRow[], { per = 'window', beside, level = 0.95 }: DifferencesOptions): Figure {
  if (rows.length === 0) throw new RangeError('there are no differences to draw')
  const shown = rows.slice(0, ROWS_MAX)
  const found = finding(rows, beside)
  return {
    drawing: drawingOf(shown, per, beside),
    finding: found,
    alt: `Dots of ${shown.length === 1 ? 'the difference' : `${shown.length} differences`} in units per ${per} from ${beside}, with intervals, on one zero line. ${found}`,
    readLine: `Dots: mean difference in units per ${per} from ${beside}, over the same simulated ${per}s; bars: its interval, ${formatShare(level)}${rows.length > 1 ? ' for all together' : ''}. An interval on both sides of the zero line shows no difference.${shown.some(({ before }) => before !== null) ? ` In brackets: units per ${per} before and after.` : ''}${shown.length < rows.length ? ` Of ${rows.length} the first ${shown.length} are drawn.` : ''}`,
    table: differenceTable(rows, per, beside),
  }
}

function drawingOf(rows: readonly DifferenceRow[], per: string, beside: string): Figure['drawing'] {
  const least = Math.min(0, ...rows.map(({ low, mean }) => Math.min(low, mean)))
  const most = Math.max(0, ...rows.map(({ high, mean }) => Math.max(high, mean)))
  const span = most - least || 1
  const step = niceStep(span, 5)
  return {
    heightPixels: STEP_PIXELS * rows.length,
    across: {
      from: Math.floor((least - 0.04 * span) / step) * step,
      to: Math.ceil((most + 0.04 * span) / step) * step,
      title: `Units per ${per} more than ${beside}`,
      grid: true,
    },
    up: rowAxis(rows.length),
    marks: [
      { mark: 'rule', x: [0, 0], y: ['from', 'to'], ink: 'zero' },
      ...rows.flatMap((row, at): Mark[] => {
        const text = `${numberText(row)}${row.before === null || row.after === null ? '' : ` (${formatNumber(row.before, 0)} → ${formatNumber(row.after, 0)})`}`
        const tip = `${row.name}: ${text} units per ${per}, ${formatNumber(row.low, 1)} to ${formatNumber(row.high, 1)}`
        const y = at + 0.72
        return [
          ...rowWords(at, row.name, text, row.named === true),
          ...(row.high > row.low ? [{ mark: 'rule', x: [row.low, row.high], y: [y, y], ink: 'whisker', ends: 4, tip } satisfies Mark] : []),
          { mark: 'dot', x: row.mean, y, ink: row.named === true ? 'chosenDot' : 'dot', radius: row.named === true ? 6 : 4, tip },
        ]
      }),
    ],
    rightPixels: 14,
  }
}

/** "−8.2", "+2.0", "0" */
function numberText({ mean, low, high }: DifferenceRow): string {
  const text = formatNumber(mean, differenceDecimals(mean, (high - low) / 2))
  return mean > 0 && /[1-9]/.test(text) ? `+${text}` : text
}

function finding(rows: readonly DifferenceRow[], beside: string): string {
  const list = (some: readonly DifferenceRow[]): string =>
    some.length > NAMED_MAX ? `${some.length} of ${rows.length}` : some.map((row) => `${row.name} (${numberText(row)})`).join(', ')
  const more = rows.filter(({ low, high }) => low >= 0 && high > 0)
  const less = rows.filter(({ low, high }) => high <= 0 && low < 0)
  const parts = [
    ...(more.length === 0 ? [] : [`more than ${beside}: ${list(more)}`]),
    ...(less.length === 0 ? [] : [`less than ${beside}: ${list(less)}`]),
  ]
  if (parts.length === 0) return `No difference from ${beside} is shown.`
  const text = parts.join('; ')
  return `${text[0]!.toUpperCase()}${text.slice(1)}.`
}

/** more rows are told by their number */
const NAMED_MAX = 3

function differenceTable(rows: readonly DifferenceRow[], per: string, beside: string): Table {
  const known = rows.some(({ before, after }) => before !== null && after !== null)
  const whole = (value: number | null): string => (value === null ? '–' : formatNumber(value, 0))
  return tableOf<DifferenceRow>({
    caption: `Units per ${per} more than ${beside}`,
    columns: [
      wordColumn('Name', 'name', 'what is set beside it', ({ name }) => name),
      ...(known
        ? [
            {
              head: 'Before',
              text: (row: DifferenceRow) => whole(row.before),
              data: [['before', `units per ${per} before`, (row: DifferenceRow) => row.before] as const],
            },
            {
              head: 'After',
              text: (row: DifferenceRow) => whole(row.after),
              data: [['after', `units per ${per} after`, (row: DifferenceRow) => row.after] as const],
            },
          ]
        : []),
      { head: 'More', text: numberText, data: [['more', `units per ${per} more, mean`, ({ mean }) => mean]] },
      {
        head: 'Interval',
        text: ({ low, high, mean }) =>
          high > low ? `${formatNumber(low, 1)} to ${formatNumber(high, 1)}` : numberText({ mean, low, high } as DifferenceRow),
        data: [
          ['more_low', 'lower limit of the interval', ({ low }) => low],
          ['more_high', 'upper limit of the interval', ({ high }) => high],
        ],
      },
    ],
    rows,
    marked: ({ named }) => named === true,
  })
}
