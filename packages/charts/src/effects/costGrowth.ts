/** How the cost of one event grows with the size of a line: one line of points for each way to compute it. */
import type { Mark } from '../drawing/drawing.ts'
import type { Figure } from '../draw/figure.ts'
import { capital, formatNumber } from '../table/format.ts'
import { niceStep } from '../draw/window.ts'
import { type Table, tableOf } from '../table/table.ts'
import { fieldName } from '../table/tableFields.ts'

/** One size, computed one way. */
export interface CostPoint {
  /** what computed it: "event engine" */
  readonly series: string
  /** zones, or carriers; ≥ 1 */
  readonly size: number
  /** of one event: median of the runs, > 0 */
  readonly cost: number
  /** least and greatest of the runs */
  readonly least: number
  readonly greatest: number
}

/** How the chart of costs is told. */
export interface CostGrowthOptions {
  /** what the size counts, a plural: "zones", "carriers" */
  readonly of: string
  /** in what the cost is told, a plural: "nanoseconds" */
  readonly unit: string
  /** the level axis: each step ten times the one before. Default: false, each step as long as the other */
  readonly tenfold?: boolean
}

const HEIGHT = 300
/** dashes of the lines, by series */
const DASHES: readonly (readonly number[])[] = [
  [1, 0],
  [6, 3],
  [2, 3],
]

/**
 * Points and lines of the cost against the size.
 *
 * @param points      each series in ascending order of size, at least two sizes; one series after the other
 * @throws RangeError if there are fewer, or more than three series
 * @example costGrowth([20, 200].map((size) => ({ series: 'event engine', size, cost: 90 + size / 20, least: 90, greatest: 110 })), { of: 'zones', unit: 'nanoseconds' }).finding // => 'Event engine: from 20 to 200 zones an event comes to cost 1.10 times as much.'
 */
export function costGrowth(points: readonly CostPoint[], { of, unit, tenfold = false }: CostGrowthOptions): Figure {
  const names = [...new Set(points.map(({ series }) => series))]
  const bySeries = names.map((name) => points.filter(({ series }) => series === name))
  if (names.length === 0 || names.length > DASHES.length || bySeries.some((each) => each.length < 2))
    throw new RangeError(`the growth of cost is drawn for 1 to ${DASHES.length} series, each of 2 sizes or more`)
  const found = bySeries.map((each) => growthSentence(each, of)).join(' ')
  const alt = `${capital(unit)} an event against the number of ${of}, for ${names.join(' and ')}. ${found}`
  return {
    drawing: drawingOf(bySeries, names, { of, unit, tenfold }),
    finding: found,
    alt,
    readLine: `Dots: median of the runs; the bar through a dot goes from the least to the greatest. The upright axis begins at 0.`,
    table: costTable(points, names, { of, unit }),
  }
}

function growthSentence(each: readonly CostPoint[], of: string): string {
  const [first, last] = [each[0]!, each.at(-1)!]
  const factor = formatNumber(last.cost / first.cost, 2)
  const sizes = `from ${formatNumber(first.size, 0)} to ${formatNumber(last.size, 0)} ${of}`
  return `${capital(first.series)}: ${sizes} an event comes to cost ${factor} times as much.`
}

function drawingOf(
  bySeries: readonly (readonly CostPoint[])[],
  names: readonly string[],
  { of, unit, tenfold }: Required<CostGrowthOptions>,
): Figure['drawing'] {
  const points = bySeries.flat()
  const sizes = [...new Set(points.map(({ size }) => size))].sort((a, b) => a - b)
  const highest = Math.max(...points.map(({ greatest }) => greatest))
  const step = niceStep(highest * 1.08, 6)
  return {
    heightPixels: HEIGHT,
    across: {
      from: tenfold ? sizes[0]! : 0,
      to: sizes.at(-1)!,
      title: capital(of),
      tenfold,
      ticks: sizes.map((size) => ({ at: size, text: formatNumber(size, 0) })),
    },
    up: { from: 0, to: Math.ceil((highest * 1.08) / step) * step, title: `${capital(unit)} an event`, grid: true },
    key: names.map((text, index) => ({ text, sample: 'line', ink: 'line', dash: DASHES[index]! })),
    marks: bySeries.flatMap((each, index): Mark[] => [
      { mark: 'path', points: each.map(({ size, cost }) => [size, cost] as const), ink: 'line', dash: DASHES[index]! },
      ...each.flatMap(({ series, size, cost, least, greatest }): Mark[] => {
        const tip = `${series}, ${formatNumber(size, 0)} ${of}: ${costText(cost)} ${unit} an event (${costText(least)} to ${costText(greatest)})`
        return [
          { mark: 'rule', x: [size, size], y: [least, greatest], ink: 'whisker' },
          { mark: 'dot', x: size, y: cost, ink: 'dot', tip },
        ]
      }),
    ]),
    rightPixels: 24,
  }
}

function costTable(points: readonly CostPoint[], names: readonly string[], { of, unit }: CostGrowthOptions): Table {
  const sizes = [...new Set(points.map(({ size }) => size))].sort((a, b) => a - b)
  const at = (name: string, size: number): CostPoint | undefined => points.find((each) => each.series === name && each.size === size)
  const text = (point: CostPoint | undefined): string =>
    point === undefined ? '–' : `${costText(point.cost)} (${costText(point.least)} … ${costText(point.greatest)})`
  return tableOf<number>({
    caption: `${capital(unit)} an event, by number of ${of}: median (least … greatest)`,
    columns: [
      { head: capital(of), text: (size) => formatNumber(size, 0), data: [['size', `number of ${of}`, (size) => size]] },
      ...names.map((name) => ({
        head: name,
        text: (size: number) => text(at(name, size)),
        data: [
          [fieldName(name), `${unit} an event, median of the runs`, (size: number) => at(name, size)?.cost ?? null] as const,
          [`${fieldName(name)}_least`, 'least of the runs', (size: number) => at(name, size)?.least ?? null] as const,
          [`${fieldName(name)}_greatest`, 'greatest of the runs', (size: number) => at(name, size)?.greatest ?? null] as const,
        ],
      })),
    ],
    rows: sizes,
  })
}

/** Three digits. */
const costText = (cost: number): string => formatNumber(cost, Math.max(0, 2 - Math.floor(Math.log10(cost))))
