/** How the cost of one event grows with the size of a line: one line of points for each way to compute it. */
import type { ChartRow, Figure } from './figure.ts'
import { formatNumber } from './format.ts'
import { frame, type Layer, niceStep } from './frame.ts'
import { column, row, type Table } from './table.ts'

/** One size, computed one way. */
export interface CostPoint {
  /** what computed it: "event engine" */
  readonly series: string
  /** zones, or carriers; ≥ 1 */
  readonly size: number
  /** of one event: median of the runs, > 0 */
  readonly nanoseconds: number
  /** least and greatest of the runs */
  readonly least: number
  readonly greatest: number
}

export interface CostGrowthOptions {
  /** what the size counts, a plural: "zones", "carriers" */
  readonly of: string
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
 */
export function costGrowth(points: readonly CostPoint[], { of, tenfold = false }: CostGrowthOptions): Figure {
  const names = [...new Set(points.map(({ series }) => series))]
  const bySeries = names.map((name) => points.filter(({ series }) => series === name))
  if (names.length === 0 || names.length > DASHES.length || bySeries.some((each) => each.length < 2))
    throw new RangeError(`the growth of cost is drawn for 1 to ${DASHES.length} series, each of 2 sizes or more`)
  const rows = bySeries.flatMap((each) =>
    each.map(({ series, size, nanoseconds, least, greatest }, index): ChartRow => {
      const tip = `${series}, ${formatNumber(size, 0)} ${of}: ${formatNumber(nanoseconds, 0)} ns an event (${formatNumber(least, 0)} to ${formatNumber(greatest, 0)})`
      return { series, size, nanoseconds, least, greatest, label: index === each.length - 1 ? series : '', tip }
    }),
  )
  const found = bySeries.map((each) => growthSentence(each, of)).join(' ')
  const alt = `Nanoseconds an event against the number of ${of}, for ${names.join(' and ')}. ${found}`
  return {
    spec: frame({ description: alt, height: HEIGHT, rows, layer: layers(points, names, of, tenfold) }),
    rows,
    swapRows: false,
    finding: found,
    alt,
    readLine: `Dots: median of the runs; the bar through a dot goes from the least to the greatest. The upright axis begins at 0.`,
    table: costTable(points, names, of),
  }
}

function growthSentence(each: readonly CostPoint[], of: string): string {
  const [first, last] = [each[0]!, each.at(-1)!]
  const factor = formatNumber(last.nanoseconds / first.nanoseconds, 2)
  const sizes = `from ${formatNumber(first.size, 0)} to ${formatNumber(last.size, 0)} ${of}`
  return `${first.series[0]!.toUpperCase()}${first.series.slice(1)}: ${sizes} an event comes to cost ${factor} times as much.`
}

function layers(points: readonly CostPoint[], names: readonly string[], of: string, tenfold: boolean): Layer[] {
  const sizes = [...new Set(points.map(({ size }) => size))].sort((a, b) => a - b)
  const highest = Math.max(...points.map(({ greatest }) => greatest))
  const step = niceStep(highest * 1.08, 6)
  const top = Math.ceil((highest * 1.08) / step) * step
  const x = {
    field: 'size',
    type: 'quantitative',
    title: `${of[0]!.toUpperCase()}${of.slice(1)}`,
    scale: { type: tenfold ? 'log' : 'linear', domain: [tenfold ? sizes[0]! : 0, sizes.at(-1)!] as [number, number] },
    axis: { values: sizes, format: ',d', labelOverlap: true, labelFlush: true },
  } as const
  const y = {
    field: 'nanoseconds',
    type: 'quantitative',
    title: 'Nanoseconds an event',
    scale: { domain: [0, top] as [number, number], nice: false },
    axis: { tickCount: 6, grid: true },
  } as const
  const tooltip = { field: 'tip' } as const
  return [
    ...names.map(
      (name, index): Layer => ({
        transform: [{ filter: `datum.series === ${JSON.stringify(name)}` }],
        mark: { type: 'line', style: 'meanStep', strokeDash: [...DASHES[index]!] },
        encoding: { x, y },
      }),
    ),
    { mark: { type: 'rule', style: 'mean' }, encoding: { x, y: { ...y, field: 'least' }, y2: { field: 'greatest' }, tooltip } },
    { mark: { type: 'point', style: 'meanDot' }, encoding: { x, y, tooltip } },
    ...(['halo', null] as const).map(
      (halo): Layer => ({
        mark: { type: 'text', style: halo === null ? 'words' : ['words', halo], align: 'right', baseline: 'bottom', dy: -10, dx: -6 },
        encoding: { x, y, text: { field: 'label' } },
      }),
    ),
  ]
}

function costTable(points: readonly CostPoint[], names: readonly string[], of: string): Table {
  const sizes = [...new Set(points.map(({ size }) => size))].sort((a, b) => a - b)
  const text = (name: string, size: number): string => {
    const point = points.find((each) => each.series === name && each.size === size)
    return point === undefined
      ? '–'
      : `${formatNumber(point.nanoseconds, 0)} (${formatNumber(point.least, 0)} … ${formatNumber(point.greatest, 0)})`
  }
  return {
    caption: `Nanoseconds an event, by number of ${of}: median (least … greatest)`,
    columns: [column(`${of[0]!.toUpperCase()}${of.slice(1)}`, 'right'), ...names.map((name) => column(name, 'right'))],
    rows: sizes.map((size) => row([formatNumber(size, 0), ...names.map((name) => text(name, size))])),
    note: null,
  }
}
