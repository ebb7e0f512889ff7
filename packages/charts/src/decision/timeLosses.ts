/** Where the planned time of one station goes: floating bars from the planned time down to the time that produces. */
import type { Mark } from '../drawing/drawing.ts'
import { barIn, rowAxis, rowWords, STEP_PIXELS } from '../drawing/rows.ts'
import type { Figure } from '../draw/figure.ts'
import { formatMinutes, formatShare } from '../table/format.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'

/** Time that is lost in one way. */
export interface TimeLoss {
  /** such as "exchanging carriers", or the name of a stop */
  readonly name: string
  /** of one shift, mean */
  readonly seconds: number
}

/** How the chart is told. */
export interface TimeLossesOptions {
  readonly station: string
  /** planned seconds of a shift, breaks outside */
  readonly planned: number
  /** what one window is called, such as "shift" */
  readonly per: string
}

/** less than this share of the planned time is not told by name */
const SMALL = 0.002

/**
 * A full bar of the planned time, a floating bar for each loss, largest first, and what is left: the time that produces.
 *
 * @param losses  seconds ≥ 0, together at most the planned time
 * @throws RangeError  if there is no planned time
 * @example timeLosses([{ name: 'exchanging carriers', seconds: 3600 }], { station: 'S6', planned: 27_000, per: 'shift' }).finding // => 'S6 produces 87 % of its planned time; most of the rest goes to exchanging carriers (60 min a shift).'
 */
export function timeLosses(losses: readonly TimeLoss[], options: TimeLossesOptions): Figure {
  const { station, planned, per } = options
  if (!(planned > 0)) throw new RangeError('there is no planned time to tell of')
  const told = losses.filter(({ seconds }) => seconds >= SMALL * planned).toSorted((a, b) => b.seconds - a.seconds)
  const small = losses.filter(({ seconds }) => seconds < SMALL * planned).reduce((sum, { seconds }) => sum + seconds, 0)
  const rows = small > 0 ? [...told, { name: 'others, each less than 0.2 %', seconds: small }] : told
  const lost = rows.reduce((sum, { seconds }) => sum + seconds, 0)
  const found = finding(told, planned - lost, options)
  return {
    drawing: drawingOf(rows, options),
    finding: found,
    alt: `Bars of the minutes of a ${per}, from the planned time of ${station} down to what it produces. ${found}`,
    readLine: `From the top: the planned time, breaks outside; what each loss takes of it; what is left produces. Minutes a ${per}, mean of the simulated ${per}s.`,
    table: lossTable(rows, planned - lost, options),
  }
}

function finding(told: readonly TimeLoss[], produces: number, { station, planned, per }: TimeLossesOptions): string {
  const [first, second] = told
  const share = `${station} produces ${formatShare(produces / planned)} of its planned time`
  if (first === undefined) return `${share}.`
  const minutes = ({ name, seconds }: TimeLoss): string => `${name} (${formatMinutes(seconds)} min a ${per})`
  return `${share}; most of the rest goes to ${minutes(first)}${second === undefined ? '' : ` and ${minutes(second)}`}.`
}

function drawingOf(losses: readonly TimeLoss[], { planned }: TimeLossesOptions): Figure['drawing'] {
  let level = planned
  const steps = losses.map(({ name, seconds }) => {
    const from = level
    level -= seconds
    return { name, from, to: level, text: `−${formatMinutes(seconds)} min` }
  })
  const all = [
    { name: 'planned time', from: 0, to: planned, text: `${formatMinutes(planned)} min` },
    ...steps,
    { name: 'produces', from: 0, to: level, text: `${formatMinutes(level)} min` },
  ]
  const full = (row: number): boolean => row === 0 || row === all.length - 1
  return {
    heightPixels: STEP_PIXELS * all.length,
    across: {
      from: 0,
      to: planned / 60,
      title: 'Minutes',
      grid: true,
    },
    up: rowAxis(all.length),
    marks: all.flatMap((each, row): Mark[] => [
      ...rowWords(row, each.name, each.text, full(row)),
      {
        mark: 'area',
        x: [Math.min(each.from, each.to) / 60, Math.max(each.from, each.to) / 60],
        y: barIn(row),
        ink: full(row) ? 'barPale' : 'bar',
        tip: `${each.name}: ${each.text}`,
      },
    ]),
    rightPixels: 14,
  }
}

function lossTable(losses: readonly TimeLoss[], produces: number, { station, planned, per }: TimeLossesOptions): Table {
  const rows = [{ name: 'planned time', seconds: planned }, ...losses, { name: 'produces', seconds: produces }]
  return tableOf<TimeLoss>({
    caption: `Where the planned time of ${station} goes`,
    columns: [
      wordColumn('Time', 'time', 'planned time, a loss, or what is left', ({ name }) => name),
      {
        head: `Min a ${per}`,
        text: ({ seconds }) => formatMinutes(seconds),
        data: [['seconds', `mean seconds a ${per}`, ({ seconds }) => seconds]],
      },
      {
        head: 'Of the\nplanned time',
        text: ({ seconds }) => formatShare(seconds / planned),
        data: [['share', 'of the planned time, 0 … 1', ({ seconds }) => seconds / planned]],
      },
    ],
    rows,
    marked: (_, index) => index === 0 || index === rows.length - 1,
    note: 'Largest loss first. Starved, blocked and waiting: time that others cost it.',
  })
}
