/** Time stopped in one window, by cause. */
import type { SweepCount } from '@loopwright/study'
import type { ChartRow, Figure, WindowWords } from '../draw/figure.ts'
import { formatMinutes, formatNumber } from '../table/format.ts'
import { carriersText, frame, type Layer, niceStep, windowOf } from '../draw/frame.ts'
import { type Table, tableOf } from '../table/table.ts'

export interface StoppedTimeOptions extends WindowWords {}

type Single = SweepCount['stoppedBy'][number]

/** A cause, and where one cause stands at several places: each of them. */
export interface StopCause extends Single {
  /** default: one place, or none that is worth a name */
  readonly places?: readonly { readonly place: string; readonly seconds: number; readonly count: number }[]
}

type Stop = StopCause

/** more causes are added up in one bar */
const CAUSES_MAX = 12
/** bar and the line of text above it */
const STEP_PIXELS = 40
const BREAK = 'break'

/**
 * Horizontal bars, the longest first; breaks stand in the table only.
 *
 * @param count     carriers, and the mean seconds and stops in one window by cause
 * @throws RangeError   if the window is not longer than 0 s
 * @example stoppedTime({ carriers: 3, stoppedBy: [] }, { windowSeconds: 3600 }).finding // => 'Nothing stopped.'
 */
export function stoppedTime(
  count: Pick<SweepCount, 'carriers'> & { readonly stoppedBy: readonly StopCause[] },
  options: StoppedTimeOptions,
): Figure {
  const { per } = windowOf(options)
  const sorted = inOrder(count.stoppedBy)
  const shown = gathered(drawn(sorted))
  const rows = shown.map(({ cause, seconds, count: stops }): ChartRow => {
    const text = `${formatMinutes(seconds)} min, ${stopsText(stops)}`
    return { cause, minutes: seconds / 60, planned: cause === BREAK, text, tip: `${cause}: ${text} in one ${per}` }
  })
  const found = finding(sorted, per)
  const alt = `Bars of the mean minutes stopped in one ${per}, for each of ${shown.length} causes. ${found}`
  return {
    spec: frame({ description: alt, height: Math.max(STEP_PIXELS, shown.length * STEP_PIXELS), rows, layer: layers(rows, per) }),
    rows,
    swapRows: false,
    finding: found,
    alt,
    readLine: `Mean minutes in one ${per} during which something stood for this cause, and how often. Causes may overlap, so they do not add up. Planned breaks stand in the table.`,
    table: stopTable(count.carriers, sorted, per),
  }
}

/** Unplanned causes, the longest first; breaks last. Causes that never came are kept: their absence tells something. */
function inOrder(stops: readonly Stop[]): Stop[] {
  return stops.toSorted((a, b) => Number(a.cause === BREAK) - Number(b.cause === BREAK) || b.seconds - a.seconds)
}

/** Breaks would dwarf the rest, and they are known beforehand: they are drawn only where there is nothing else. */
function drawn(stops: readonly Stop[]): readonly Stop[] {
  const unplanned = stops.filter(({ cause }) => cause !== BREAK)
  return unplanned.length === 0 ? stops : unplanned
}

function gathered(stops: readonly Stop[]): readonly Stop[] {
  if (stops.length <= CAUSES_MAX) return stops
  const rest = stops.slice(CAUSES_MAX - 1)
  const sum = (of: 'seconds' | 'count') => rest.reduce((total, stop) => total + stop[of], 0)
  return [
    ...stops.slice(0, CAUSES_MAX - 1),
    { cause: `${rest.length} other causes, added up`, seconds: sum('seconds'), count: sum('count') },
  ]
}

function layers(rows: readonly ChartRow[], per: string): Layer[] {
  const longest = Math.max(1, ...rows.map(({ minutes }) => Number(minutes)))
  const y = { field: 'cause', type: 'nominal', sort: null, axis: null, scale: { paddingInner: 0.55, paddingOuter: 0.55 } } as const
  const step = niceStep(longest, 5)
  const x = {
    field: 'minutes',
    type: 'quantitative',
    title: `Minutes stopped in one ${per}`,
    scale: { domain: [0, Math.ceil(longest / step) * step] as [number, number] },
    axis: { tickCount: 5 },
  } as const
  const above = { ...y, bandPosition: 0 }
  const tooltip = { field: 'tip' } as const
  return [
    ...([false, true] as const).map(
      (planned): Layer => ({
        transform: [{ filter: `datum.planned === ${planned}` }],
        mark: { type: 'bar', style: planned ? 'countPale' : 'count' },
        encoding: { y, x, x2: { datum: 0 }, tooltip },
      }),
    ),
    {
      mark: { type: 'text', style: 'words', align: 'left', baseline: 'bottom', dy: -3, limit: { expr: 'width - 130' }, x: 0 },
      encoding: { y: above, text: { field: 'cause' }, tooltip },
    },
    {
      mark: { type: 'text', style: 'words', align: 'right', baseline: 'bottom', dy: -3, x: 'width' },
      encoding: { y: above, text: { field: 'text' }, tooltip },
    },
  ]
}

function stopsText(stops: number): string {
  return `${formatNumber(stops, stops < 9.95 ? 1 : 0)} ${stops === 1 ? 'stop' : 'stops'}`
}

function finding(stops: readonly Stop[], per: string): string {
  const breaks = stops.find(({ cause }) => cause === BREAK)
  const rest = breaks === undefined ? '' : ` Breaks take ${formatMinutes(breaks.seconds)} min.`
  const worst = stops.find(({ cause, seconds }) => cause !== BREAK && seconds > 0)
  if (worst === undefined)
    return breaks === undefined ? 'Nothing stopped.' : `Nothing stopped but for breaks: ${formatMinutes(breaks.seconds)} min of a ${per}.`
  return `The largest unplanned cause is ${worst.cause}: ${formatMinutes(worst.seconds)} min of a ${per} in ${stopsText(worst.count)}.${rest}`
}

interface Row {
  readonly cause: string
  /** null: the cause as a whole */
  readonly place: string | null
  readonly seconds: number
  readonly count: number
}

/** A row for each cause; one that stands at several places has these below it. */
function stopTable(carriers: number, stops: readonly Stop[], per: string): Table {
  const rows = stops.flatMap(({ cause, seconds, count, places = [] }): Row[] => [
    { cause, place: null, seconds, count },
    ...(places.length < 2 ? [] : places.map((each) => ({ cause, ...each }))),
  ])
  return tableOf<Row>({
    caption: `Stopped time by cause in one ${per} with ${carriersText(carriers)}, means`,
    columns: [
      {
        head: 'Cause',
        align: 'left',
        text: ({ cause, place }) => (place === null ? cause : `– at ${place}`),
        data: [
          ['cause', 'what stopped something', ({ cause }) => cause],
          ['place', 'where; empty: the cause as a whole, at all its places', ({ place }) => place],
        ],
      },
      {
        head: 'Stopped (min)',
        text: ({ seconds }) => formatMinutes(seconds),
        data: [['seconds_mean', `seconds per ${per}, mean`, ({ seconds }) => seconds]],
      },
      {
        head: 'Stops',
        text: ({ count }) => formatNumber(count, 1),
        data: [['stops_mean', `stops per ${per}, mean`, ({ count }) => count]],
      },
      {
        head: 'Mean length (min)',
        text: ({ seconds, count }) => (count > 0 ? formatNumber(seconds / count / 60, 1) : '–'),
        data: [
          ['length_s', 'seconds of one stop, mean; empty: there was none', ({ seconds, count }) => (count > 0 ? seconds / count : null)],
        ],
      },
    ],
    rows,
    note: 'Causes may overlap in time, so they do not add up.',
  })
}
