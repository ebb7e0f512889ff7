/** A trial look by look: what a line that meets its forecast makes by then, and below which count the trial may end. */
import type { Mark } from '../drawing/drawing.ts'
import type { Figure } from '../draw/figure.ts'
import { niceStep } from '../draw/window.ts'
import { formatDuration, formatNumber, formatShare } from '../table/format.ts'
import { type Table, tableOf } from '../table/table.ts'

/** One look at a trial. */
export interface TrialLook {
  /** from the start of the trial */
  readonly seconds: number
  /** the trial may end below this count; null: no count ends it here */
  readonly limit: number | null
  /** share of trials of the slower line that are ended by then */
  readonly caught: number
  /** what nine of ten trials of a line that meets its forecast make by then, and half of them */
  readonly low: number
  readonly middle: number
  readonly high: number
  /** units counted; null: not yet, or no trial runs */
  readonly count: number | null
}

/** How the chart is told. */
export interface TrialLooksOptions {
  /** heads the table */
  readonly caption: string
  /** below the table */
  readonly note: string
  /** false: a plan, without a column for counts */
  readonly counts: boolean
}

/**
 * The band of a line that meets its forecast, the border below which the trial may end, and the counts so far.
 *
 * @param looks  at least one, ascending
 * @throws RangeError  if there is none
 * @example trialLooks([{ seconds: 3600, limit: 40, caught: 0.3, low: 42, middle: 46, high: 50, count: 38 }], { caption: 'Counts', note: '', counts: true }).finding // => 'After 60 min 38 units were counted, fewer than the 40 below which the trial may end.'
 */
export function trialLooks(looks: readonly TrialLook[], options: TrialLooksOptions): Figure {
  if (looks.length === 0) throw new RangeError('there is no look to draw')
  const found = finding(looks)
  return {
    drawing: drawingOf(looks),
    finding: found,
    alt: `Units against the time of a trial, at ${looks.length} look${looks.length === 1 ? '' : 's'}. ${found}`,
    readLine: `Zero line: what half of the trials of a line that meets its forecast make by then. Bars: what nine of ten make. Open dots: the border; below it the trial may end.${options.counts ? ' Filled dots: counted.' : ''}`,
    table: lookTable(looks, options),
  }
}

function finding(looks: readonly TrialLook[]): string {
  const counted = looks.filter(({ count }) => count !== null)
  const below = counted.find(({ count, limit }) => limit !== null && count! < limit)
  const last = counted.at(-1)
  if (below !== undefined)
    return `After ${formatDuration(below.seconds)} ${countText(below.count!)} counted, fewer than the ${formatNumber(below.limit!, 0)} below which the trial may end.`
  if (last !== undefined) {
    const side = last.count! < last.low ? 'below' : last.count! > last.high ? 'above' : 'within'
    return `After ${formatDuration(last.seconds)} ${countText(last.count!)} counted, ${side} what nine of ten trials of a line that meets its forecast make by then (${rangeText(last)}).`
  }
  const end = looks.at(-1)!
  const first = looks.find(({ limit }) => limit !== null)
  const early =
    first === undefined || first === end
      ? 'no earlier count ends the trial'
      : `the first count that may end the trial is fewer than ${formatNumber(first.limit!, 0)} after ${formatDuration(first.seconds)}`
  return `By the end a line that meets its forecast makes ${rangeText(end)} in nine of ten trials; ${early}.`
}

const countText = (count: number): string => (count === 1 ? '1 unit was' : `${formatNumber(count, 0)} units were`)

const rangeText = ({ low, high }: TrialLook): string =>
  low === high ? formatNumber(low, 0) : `${formatNumber(low, 0)} to ${formatNumber(high, 0)}`

function drawingOf(looks: readonly TrialLook[]): Figure['drawing'] {
  const over = looks.map(({ seconds, limit, low, middle, high, count }) => ({
    x: seconds / 60,
    low: low - middle,
    high: high - middle,
    limit: limit === null ? null : limit - middle,
    count: count === null ? null : count - middle,
  }))
  const all = over.flatMap(({ low, high, limit, count }) => [low, high, limit ?? 0, count ?? 0])
  const [least, most] = [Math.min(0, ...all), Math.max(0, ...all)]
  const step = niceStep(Math.max(1, most - least), 5)
  const last = over.at(-1)!
  const every = Math.ceil(looks.length / 8)
  return {
    heightPixels: 260,
    across: {
      from: 0,
      to: last.x * 1.04,
      title: 'Minutes from the start of the trial',
      ticks: over.filter((_, index) => (over.length - 1 - index) % every === 0).map(({ x }) => ({ at: x, text: formatNumber(x, 0) })),
    },
    up: {
      from: Math.floor((least - 0.15 * step) / step) * step,
      to: Math.ceil((most + 0.15 * step) / step) * step,
      title: 'Units more than half of the trials make by then',
      grid: true,
    },
    key: [
      { text: 'nine of ten trials', sample: 'line', ink: 'whisker' },
      { text: 'border', sample: 'dot', ink: 'openDot' },
      ...(looks.some(({ count }) => count !== null) ? [{ text: 'counted', sample: 'dot', ink: 'chosenDot' } as const] : []),
    ],
    marks: [
      { mark: 'rule', x: ['from', 'to'], y: [0, 0], ink: 'zero' },
      ...over.flatMap(({ x, low, high, limit, count }, index): Mark[] => {
        const look = looks[index]!
        const tip = `After ${formatDuration(look.seconds)}: ${rangeText(look)} in nine of ten trials${look.limit === null ? '' : `, the trial may end below ${formatNumber(look.limit, 0)}`}${look.count === null ? '' : `; counted ${formatNumber(look.count, 0)}`}`
        return [
          { mark: 'rule', x: [x, x], y: [low, high], ink: 'whisker', ends: 5, tip },
          ...(limit === null ? [] : [{ mark: 'dot', x, y: limit, ink: 'openDot', radius: 4, tip } satisfies Mark]),
          ...(count === null ? [] : [{ mark: 'dot', x, y: count, ink: 'chosenDot', radius: 5, tip } satisfies Mark]),
        ]
      }),
    ],
    rightPixels: 14,
  }
}

function lookTable(looks: readonly TrialLook[], { caption, note, counts }: TrialLooksOptions): Table {
  return tableOf<TrialLook>({
    caption,
    columns: [
      {
        head: 'After',
        text: ({ seconds }) => formatDuration(seconds),
        data: [['after_s', 'seconds from the start of the trial', ({ seconds }) => seconds]],
      },
      ...(counts
        ? [
            {
              head: 'Counted',
              text: ({ count }: TrialLook): string => (count === null ? '–' : formatNumber(count, 0)),
              data: [['counted', 'units so far; empty: not yet', ({ count }: TrialLook): number | null => count] as const],
            },
          ]
        : []),
      {
        head: 'Nine of ten\ntrials',
        text: rangeText,
        data: [
          ['low', 'one of twenty trials of a line that meets its forecast has fewer by then', ({ low }) => low],
          ['high', 'one of twenty has more', ({ high }) => high],
        ],
      },
      {
        head: 'May end\nbelow',
        text: ({ limit }) => (limit === null ? 'goes on' : formatNumber(limit, 0)),
        data: [['stop_below', 'units so far; empty: no count ends it', ({ limit }) => limit]],
      },
      {
        head: 'Slower line\ncaught by then',
        text: ({ caught }) => formatShare(caught),
        data: [['caught', 'share of trials of the slower line that are ended by then', ({ caught }) => caught]],
      },
    ],
    rows: looks,
    marked: ({ count, limit }) => count !== null && limit !== null && count < limit,
    tone: ({ count, limit }) => (count !== null && limit !== null && count < limit ? 'warning' : undefined),
    note: note === '' ? null : note,
  })
}
