/** Time stopped in one window, by cause. */
import type { SweepCount } from '@loopwright/study'
import type { Mark } from '../drawing/drawing.ts'
import { rowAxis, rowWords, STEP_PIXELS } from '../drawing/rows.ts'
import type { Figure, WindowWords } from '../draw/figure.ts'
import { formatMinutes, formatNumber } from '../table/format.ts'
import { carriersText, niceStep, windowOf } from '../draw/window.ts'
import { type Table, tableOf } from '../table/table.ts'

/** How the chart of time down is told. */
export interface StoppedTimeOptions extends WindowWords {
  /** the most seconds of a cause that the axis must hold, where several counts share it. Default: those of this count */
  readonly secondsMax?: number
}

type Single = SweepCount['stoppedBy'][number]

/** A cause, and where one cause stands at several places: each of them. */
export interface StopCause extends Single {
  /** default: one place, or none that is worth a name */
  readonly places?: readonly { readonly place: string; readonly seconds: number; readonly count: number }[]
}

type Stop = StopCause

/** more causes are added up in one bar */
const CAUSES_MAX = 12
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
  const found = finding(sorted, per)
  const alt = `Bars of the mean minutes stopped in one ${per}, for each of ${shown.length} causes. ${found}`
  return {
    drawing: drawingOf(shown, per, options.secondsMax ?? 0),
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

function drawingOf(stops: readonly Stop[], per: string, secondsMax: number): Figure['drawing'] {
  const longest = Math.max(1, secondsMax / 60, ...stops.map(({ seconds }) => seconds / 60))
  const step = niceStep(longest, 5)
  return {
    heightPixels: STEP_PIXELS * Math.max(1, stops.length),
    across: { from: 0, to: Math.ceil(longest / step - 1e-9) * step, title: `Minutes stopped in one ${per}`, grid: true },
    up: rowAxis(stops.length),
    marks: stops.flatMap(({ cause, seconds, count }, row): Mark[] => {
      const text = `${formatMinutes(seconds)} min, ${stopsText(count)}`
      const tip = `${cause}: ${text} in one ${per}`
      return [
        ...rowWords(row, cause, text),
        { mark: 'area', x: [0, seconds / 60], y: [row + 0.48, row + 0.92], ink: cause === BREAK ? 'barPale' : 'bar', tip },
      ]
    }),
  }
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
