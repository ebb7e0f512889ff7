/** How a line gets going: output and products in line from an empty start on, and the cut after which the start is forgotten. */
import type { SteadyResult } from '@loopwright/study'
import type { Mark } from '../drawing/drawing.ts'
import type { Figure } from '../draw/figure.ts'
import { niceStep } from '../draw/window.ts'
import { formatDuration, formatNumber } from '../table/format.ts'
import { type Table, tableOf } from '../table/table.ts'

/** What the picture needs of a search for the warm-up. */
export type WarmUpNumbers = Pick<SteadyResult, 'intervalSeconds' | 'cutSeconds' | 'outputPerHour' | 'productsInLine' | 'replications'> & {
  readonly series: NonNullable<SteadyResult['series']>
}

/** How the chart of a start is told. */
export interface WarmUpOptions {
  /** the cut as it is told elsewhere: "32 min". Default: its length */
  readonly cut?: string
}

/** how much of the run is drawn, in cuts */
const CUTS_SHOWN = 4
/** intervals at least, so that the level is seen */
const LEAST = 24
/** rows of the table */
const ROWS_MAX = 40

/**
 * Units an hour of each interval as a stepped line, with the level of steady production and the cut.
 *
 * @param result  with means over the runs of each interval
 * @example warmUp({ intervalSeconds: 300, cutSeconds: 600, replications: 5, outputPerHour: null, productsInLine: null, series: { unitsPerHour: [0, 20, 40, 40], products: [1, 2, 3, 3] } }).finding // => 'The start shows for 10 min: until then fewer units come off than later.'
 */
export function warmUp(
  result: WarmUpNumbers,
  { cut = result.cutSeconds === null ? '' : formatDuration(result.cutSeconds) }: WarmUpOptions = {},
): Figure {
  const { series, intervalSeconds, cutSeconds, replications } = result
  const all = series.unitsPerHour.length
  const shown = Math.min(all, Math.max(LEAST, Math.ceil(((cutSeconds ?? 0) / intervalSeconds) * CUTS_SHOWN)))
  const found = finding(cutSeconds, cut)
  return {
    drawing: drawingOf(result, shown, cut),
    finding: found,
    alt: `Stepped line of units an hour over ${formatDuration(shown * intervalSeconds)} from an empty start, mean of ${replications} runs. ${found}`,
    readLine: `Steps: mean units an hour of ${replications} runs in intervals of ${formatDuration(intervalSeconds)}, from an empty line on, without breaks.${cutSeconds === null ? '' : ' Shaded: to be discarded.'}${result.outputPerHour === null ? '' : ' Dashed: the level after the cut.'}${shown < all ? ` The first ${formatDuration(shown * intervalSeconds)} of ${formatDuration(all * intervalSeconds)} are drawn.` : ''}`,
    table: seriesTable(result, shown),
  }
}

function finding(cutSeconds: number | null, cut: string): string {
  if (cutSeconds === null) return 'No cut is found after which output keeps its level.'
  if (cutSeconds === 0) return 'The start leaves no trace: output has its level from the first interval on.'
  return `The start shows for ${cut}: until then fewer units come off than later.`
}

function drawingOf({ series, intervalSeconds, cutSeconds, outputPerHour }: WarmUpNumbers, shown: number, text: string): Figure['drawing'] {
  const rates = series.unitsPerHour.slice(0, shown)
  const top = Math.max(1, ...rates, outputPerHour?.mean ?? 0) * 1.12
  const step = niceStep(top, 5)
  const minutes = (interval: number): number => (interval * intervalSeconds) / 60
  const cut = cutSeconds === null || cutSeconds === 0 ? null : cutSeconds / 60
  const last = minutes(shown)
  const left = cut !== null && cut < last * 0.6
  return {
    heightPixels: 260,
    across: { from: 0, to: last, title: 'Minutes from an empty line' },
    up: { from: 0, to: Math.ceil(top / step) * step, title: 'Units an hour', grid: true },
    marks: [
      ...(cut === null ? [] : [{ mark: 'area', x: [0, cut], y: ['from', 'to'], ink: 'pause', tip: `warm-up: ${text}` } satisfies Mark]),
      ...(outputPerHour === null
        ? []
        : [{ mark: 'rule', x: [cut ?? 0, 'to'], y: [outputPerHour.mean, outputPerHour.mean], ink: 'plan' } satisfies Mark]),
      { mark: 'path', points: rates.flatMap((rate, at) => [[minutes(at), rate] as const, [minutes(at + 1), rate] as const]), ink: 'line' },
      ...(cut === null
        ? []
        : ([
            { mark: 'rule', x: [cut, cut], y: ['from', 'to'], ink: 'chosenLine' },
            {
              mark: 'words',
              x: cut,
              y: 'from',
              dx: left ? 6 : -6,
              dy: -12,
              align: left ? 'start' : 'end',
              text: `discard ${text}`,
              ink: 'chosenWords',
              rim: 'paper',
            },
          ] satisfies Mark[])),
    ],
    rightPixels: 16,
  }
}

function seriesTable({ series, intervalSeconds, cutSeconds }: WarmUpNumbers, shown: number): Table {
  const rows = series.unitsPerHour
    .slice(0, Math.min(shown, ROWS_MAX))
    .map((rate, at) => ({ from: at * intervalSeconds, rate, products: series.products[at]! }))
  return tableOf<(typeof rows)[number]>({
    caption: 'Intervals from an empty line on, means over the runs',
    columns: [
      {
        head: 'From (min)',
        text: ({ from }) => formatNumber(from / 60, 1),
        data: [['from_s', 'seconds from the start', ({ from }) => from]],
      },
      {
        head: 'Units an hour',
        text: ({ rate }) => formatNumber(rate, 1),
        data: [['units_per_hour', 'units an hour, mean over the runs', ({ rate }) => rate]],
      },
      {
        head: 'Products in line',
        text: ({ products }) => formatNumber(products, 1),
        data: [['products', 'products in line, mean over time and runs', ({ products }) => products]],
      },
    ],
    rows,
    marked: ({ from }) => cutSeconds !== null && from <= cutSeconds && cutSeconds < from + intervalSeconds,
    note: cutSeconds === null || cutSeconds === 0 ? null : 'The marked row has the cut.',
  })
}
