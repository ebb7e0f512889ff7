/** Measured times of one task: how many fall where, with the curve that stands for them. */
import type { Mark } from '../drawing/drawing.ts'
import type { Figure } from '../draw/figure.ts'
import { niceStep } from '../draw/window.ts'
import { formatNumber, formatShare } from '../table/format.ts'
import { type Table, tableOf } from '../table/table.ts'

/** Times of one task, and what is simulated instead of them. */
export interface MeasuredTimes {
  /** such as "wire, small" */
  readonly name: string
  /** seconds, in the order in which they were taken */
  readonly values: readonly number[]
  /** seconds, of all that were taken */
  readonly mean: number
  /** share of times up to x seconds that the curve expects; null: no curve stands for them */
  readonly cdf: ((x: number) => number) | null
  /** what the curve is called, such as "lognormal"; '': none */
  readonly curve: string
}

interface Bin {
  readonly from: number
  readonly to: number
  readonly count: number
  /** times that the curve expects there; null: no curve */
  readonly expected: number | null
}

const BINS_ABOUT = 12
const CURVE_POINTS = 60

/**
 * Columns: how many times were measured in each stretch; the line is what the curve expects.
 *
 * @throws RangeError  without a value
 * @example timesSpread({ name: 'wire', values: [41, 38, 45, 52, 39], mean: 43, cdf: null, curve: '' }).table.rows.length // => 8
 */
export function timesSpread(times: MeasuredTimes): Figure {
  const bins = binsOf(times)
  const found = finding(times)
  return {
    drawing: drawingOf(times, bins),
    finding: found,
    alt: `Columns of how many of ${times.values.length} times fall into each stretch of seconds. ${found}`,
    readLine: `Each column counts measured times.${times.cdf === null ? '' : ` The line is what the curve (${times.curve}) expects in a column.`} The dashed line is the mean.`,
    table: binTable(times, bins),
  }
}

function binsOf({ values, cdf }: MeasuredTimes): Bin[] {
  if (values.length === 0) throw new RangeError('there is no time to show')
  const [least, most] = [Math.min(...values), Math.max(...values)]
  const width = most > least ? niceStep(most - least, BINS_ABOUT) : Math.max(1, niceStep(least, 10))
  const first = Math.floor(least / width)
  const last = Math.max(first, Math.floor(most / width))
  return Array.from({ length: last - first + 1 }, (_, index) => {
    const from = Number(((first + index) * width).toPrecision(12))
    const to = Number(((first + index + 1) * width).toPrecision(12))
    const count = values.filter((value) => value >= from && value < to).length
    return { from, to, count, expected: cdf === null ? null : values.length * (cdf(to) - cdf(from)) }
  })
}

function drawingOf({ values, mean, cdf, curve }: MeasuredTimes, bins: readonly Bin[]): Figure['drawing'] {
  const [from, to] = [bins[0]!.from, bins.at(-1)!.to]
  const width = bins[0]!.to - from
  const points =
    cdf === null
      ? []
      : Array.from({ length: CURVE_POINTS + 1 }, (_, index) => {
          const x = from + ((to - from) * index) / CURVE_POINTS
          return [x, values.length * (cdf(x + width / 2) - cdf(x - width / 2))] as const
        })
  const top = Math.max(1, ...bins.map(({ count }) => count), ...points.map(([, y]) => y)) * 1.06
  const step = Math.max(1, niceStep(top, 4))
  const left = mean > (from + to) / 2
  return {
    heightPixels: 200,
    across: { from, to, title: 'Seconds' },
    up: {
      from: 0,
      to: top * 1.16,
      title: `Times, of ${values.length}`,
      grid: true,
      ticks: Array.from({ length: Math.floor(top / step) + 1 }, (_, index) => ({ at: index * step, text: formatNumber(index * step, 0) })),
    },
    key: cdf === null ? [] : [{ text: `what the curve expects: ${curve}`, sample: 'line', ink: 'chosenLine' }],
    marks: [
      ...bins.map(
        ({ from: low, to: high, count }): Mark => ({
          mark: 'area',
          x: [low, high],
          y: [0, count],
          ink: 'bar',
          tip: `${secondsText(low)} to ${secondsText(high)} s: ${count} of ${values.length}`,
        }),
      ),
      ...(points.length === 0 ? [] : [{ mark: 'path', points, ink: 'chosenLine' } satisfies Mark]),
      { mark: 'rule', x: [mean, mean], y: [0, top * 1.04], ink: 'plan' },
      {
        mark: 'words',
        x: mean,
        y: top * 1.08,
        dx: left ? -5 : 5,
        text: `mean ${secondsText(mean)} s`,
        ink: 'planWords',
        align: left ? 'end' : 'start',
      },
    ],
  }
}

const secondsText = (seconds: number): string => formatNumber(seconds, seconds < 100 ? 1 : 0)

function finding({ name, values, mean, cdf, curve }: MeasuredTimes): string {
  const above = values.filter((value) => value > 1.5 * mean).length
  const tail = above === 0 ? '' : `; ${above} of ${values.length} took more than one and a half times the mean`
  const stands = cdf === null ? 'the measured values are simulated' : `the curve ${curve} is simulated`
  return `${name}: ${secondsText(Math.min(...values))} to ${secondsText(Math.max(...values))} s, ${secondsText(mean)} s on average${tail}; ${stands}.`
}

function binTable({ name, values, cdf }: MeasuredTimes, bins: readonly Bin[]): Table {
  return tableOf<Bin>({
    caption: `Times of ${name}`,
    columns: [
      {
        head: 'Seconds',
        align: 'left',
        text: ({ from, to }) => `${formatNumber(from, decimals(bins))}–${formatNumber(to, decimals(bins))}`,
        data: [
          ['from_s', 'seconds, from here on', ({ from }) => from],
          ['to_s', 'seconds, below this', ({ to }) => to],
        ],
      },
      { head: 'Measured', text: ({ count }) => String(count), data: [['measured', 'times in this stretch', ({ count }) => count]] },
      ...(cdf === null
        ? []
        : [
            {
              head: 'Expected by the curve',
              text: ({ expected }: Bin) => formatNumber(expected!, 1),
              data: [['expected', 'times that the curve expects in this stretch', ({ expected }: Bin) => expected]] as const,
            },
          ]),
      {
        head: 'Up to here',
        text: ({ to }) => formatShare(values.filter((value) => value < to).length / values.length),
        data: [['share_below', 'share of all times below to_s', ({ to }) => values.filter((value) => value < to).length / values.length]],
      },
    ],
    rows: bins,
  })
}

const decimals = (bins: readonly Bin[]): number => (bins.every(({ from, to }) => Number.isInteger(from) && Number.isInteger(to)) ? 0 : 1)
