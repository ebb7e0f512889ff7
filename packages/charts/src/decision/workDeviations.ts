/** Measured work of each station beside that of the model. */
import type { Mark } from '../drawing/drawing.ts'
import { dotIn, rowAxis, rowWords, STEP_PIXELS } from '../drawing/rows.ts'
import type { Figure } from '../draw/figure.ts'
import { niceStep } from '../draw/window.ts'
import { formatNumber, formatShare } from '../table/format.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'

/** Work of a station: measured, and of the model. */
export interface WorkDeviation {
  readonly station: string
  /** mean seconds a unit */
  readonly seconds: number
  readonly modelSeconds: number
  /** cycles measured */
  readonly n: number
  /** standard deviation of single cycles, s */
  readonly sd: number
  /** in standard errors of the measured mean; null: no spread was measured */
  readonly standardErrors: number | null
  /** shown to differ */
  readonly differs: boolean
  /** cycles that would know the mean to ± 5 % */
  readonly cyclesFor5: number
}

/** half-width of a 95 % interval in standard errors */
const Z = 1.96

/**
 * A dot for each station: how much longer its measured work is than in the model, with the interval of the measured mean.
 *
 * @param stations  at least one
 * @throws RangeError  if there is none
 * @example workDeviations([{ station: 'S6', seconds: 66, modelSeconds: 60, n: 40, sd: 3, standardErrors: 12.6, differs: true, cyclesFor5: 4 }]).finding // => 'S6 works otherwise than in the model: 10 % longer.'
 */
export function workDeviations(stations: readonly WorkDeviation[]): Figure {
  if (stations.length === 0) throw new RangeError('there are no stations to draw')
  const found = finding(stations)
  return {
    drawing: drawingOf(stations),
    finding: found,
    alt: `Dots of how much longer the measured work of ${stations.length} station${stations.length === 1 ? '' : 's'} is than in the model. ${found}`,
    readLine:
      'Dots: measured mean against the model; bars: its 95 % interval. Right of the zero line the work takes longer than in the model. Filled in colour: shown to differ.',
    table: stationTable(stations),
  }
}

const moreOf = ({ seconds, modelSeconds }: WorkDeviation): number => seconds / modelSeconds - 1
const halfOf = ({ n, sd, modelSeconds }: WorkDeviation): number => (Z * sd) / Math.sqrt(n) / modelSeconds
const sideText = (one: WorkDeviation): string => `${formatShare(Math.abs(moreOf(one)))} ${moreOf(one) < 0 ? 'shorter' : 'longer'}`

function finding(stations: readonly WorkDeviation[]): string {
  const other = stations.filter(({ differs }) => differs)
  if (other.length === 0) return 'No station that was measured is shown to work otherwise than in the model.'
  const one = other.length === 1
  return `${other.map(({ station }) => station).join(', ')} ${one ? 'works' : 'work'} otherwise than in the model: ${other.map(sideText).join(', ')}.`
}

function drawingOf(stations: readonly WorkDeviation[]): Figure['drawing'] {
  const ends = stations.flatMap((one) => [moreOf(one) - halfOf(one), moreOf(one) + halfOf(one)])
  const [least, most] = [Math.min(0, ...ends), Math.max(0, ...ends)]
  const step = niceStep(Math.max(0.02, most - least), 3)
  const from = Math.floor((least - 0.2 * step) / step) * step
  const to = Math.ceil((most + 0.2 * step) / step) * step
  const count = Math.round((to - from) / step)
  const label = (share: number): string => `${share > 1e-9 ? '+' : ''}${formatNumber(100 * share, 0)} %`
  return {
    heightPixels: STEP_PIXELS * stations.length,
    across: {
      from,
      to,
      title: 'Work longer than in the model',
      grid: true,
      ticks: Array.from({ length: count + 1 }, (_, index) => ({ at: from + index * step, text: label(from + index * step) })),
    },
    up: rowAxis(stations.length),
    marks: [
      { mark: 'rule', x: [0, 0], y: ['from', 'to'], ink: 'zero' },
      ...stations.flatMap((one, row): Mark[] => {
        const y = dotIn(row)
        const half = halfOf(one)
        const tip = `${one.station}: ${formatNumber(one.seconds, 1)} s measured, ${formatNumber(one.modelSeconds, 1)} s in the model`
        return [
          ...rowWords(row, one.station, sideText(one), one.differs),
          ...(half > 0
            ? [{ mark: 'rule', x: [moreOf(one) - half, moreOf(one) + half], y: [y, y], ink: 'whisker', ends: 4, tip } satisfies Mark]
            : []),
          { mark: 'dot', x: moreOf(one), y, ink: one.differs ? 'chosenDot' : 'dot', radius: one.differs ? 6 : 4, tip },
        ]
      }),
    ],
    rightPixels: 14,
  }
}

function stationTable(stations: readonly WorkDeviation[]): Table {
  return tableOf<WorkDeviation>({
    caption: 'Stations beside the model, work a unit',
    columns: [
      wordColumn('Station', 'station', 'name', ({ station }) => station),
      {
        head: 'Measured, s',
        text: ({ seconds }) => formatNumber(seconds, 1),
        data: [['measured_s', 'mean seconds a unit', ({ seconds }) => seconds]],
      },
      {
        head: 'Model, s',
        text: ({ modelSeconds }) => formatNumber(modelSeconds, 1),
        data: [['model_s', 'mean seconds a unit', ({ modelSeconds }) => modelSeconds]],
      },
      { head: 'Cycles', text: ({ n }) => formatNumber(n, 0), data: [['cycles', 'measured', ({ n }) => n]] },
      {
        head: 'Standard\nerrors',
        text: ({ standardErrors }) => (standardErrors === null ? '–' : formatNumber(standardErrors, 1)),
        data: [['standard_errors', 'of the measured mean; empty: no spread', ({ standardErrors }) => standardErrors]],
      },
      {
        head: 'Cycles\nfor ± 5 %',
        text: ({ cyclesFor5 }) => formatNumber(cyclesFor5, 0),
        data: [['cycles_for_5', '(1.96 · sd/(0.05 · mean))²', ({ cyclesFor5 }) => cyclesFor5]],
      },
      wordColumn('Differs', 'differs', 'more than 3 standard errors and 2 %', ({ differs }) => (differs ? 'yes' : 'not shown')),
    ],
    rows: stations,
    marked: ({ differs }) => differs,
  })
}
