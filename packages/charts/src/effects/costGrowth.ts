/** How the cost of one event grows with the size of a line: one line of points for each way to compute it. */
import type { ChartRow, Figure } from '../draw/figure.ts'
import { capital, formatNumber } from '../table/format.ts'
import { frame, type Layer, niceStep } from '../draw/frame.ts'
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

export interface CostGrowthOptions {
  /** what the size counts, a plural: "zones", "carriers" */
  readonly of: string
  /** in what the cost is told, a plural: "nanoseconds" */
  readonly unit: string
  /** the level axis: each step ten times the one before. Default: false, each step as long as the other */
  readonly tenfold?: boolean
}

const HEIGHT = 300
/** room for a name in the key, and for its piece of line */
const PIXELS_PER_CHARACTER = 8
const KEY_PIXELS = 70
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
export function costGrowth(points: readonly CostPoint[], { of, unit, tenfold = false }: CostGrowthOptions): Figure {
  const names = [...new Set(points.map(({ series }) => series))]
  const bySeries = names.map((name) => points.filter(({ series }) => series === name))
  if (names.length === 0 || names.length > DASHES.length || bySeries.some((each) => each.length < 2))
    throw new RangeError(`the growth of cost is drawn for 1 to ${DASHES.length} series, each of 2 sizes or more`)
  const rows = bySeries.flatMap((each) =>
    each.map(({ series, size, cost, least, greatest }): ChartRow => {
      const tip = `${series}, ${formatNumber(size, 0)} ${of}: ${costText(cost)} ${unit} an event (${costText(least)} to ${costText(greatest)})`
      return { series, size, cost, least, greatest, tip }
    }),
  )
  const found = bySeries.map((each) => growthSentence(each, of)).join(' ')
  const alt = `${capital(unit)} an event against the number of ${of}, for ${names.join(' and ')}. ${found}`
  return {
    spec: frame({ description: alt, height: HEIGHT, rows, layer: layers(points, names, { of, unit, tenfold }) }),
    rows,
    swapRows: false,
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

function layers(points: readonly CostPoint[], names: readonly string[], { of, unit, tenfold }: Required<CostGrowthOptions>): Layer[] {
  const sizes = [...new Set(points.map(({ size }) => size))].sort((a, b) => a - b)
  const highest = Math.max(...points.map(({ greatest }) => greatest))
  const step = niceStep(highest * 1.08, 6)
  const top = Math.ceil((highest * 1.08) / step) * step
  const x = {
    field: 'size',
    type: 'quantitative',
    title: capital(of),
    scale: { type: tenfold ? 'log' : 'linear', domain: [tenfold ? sizes[0]! : 0, sizes.at(-1)!] as [number, number] },
    axis: { values: sizes, format: ',d', labelOverlap: true, labelFlush: true },
  } as const
  const y = {
    field: 'cost',
    type: 'quantitative',
    title: `${capital(unit)} an event`,
    scale: { domain: [0, top] as [number, number], nice: false },
    axis: { tickCount: 6, grid: true },
  } as const
  const tooltip = { field: 'tip' } as const
  const longest = Math.max(...names.map((name) => name.length))
  return [
    {
      mark: { type: 'line', style: 'meanStep' },
      encoding: {
        x,
        y,
        strokeDash: {
          field: 'series',
          type: 'nominal',
          scale: { domain: [...names], range: DASHES.slice(0, names.length).map((dash) => [...dash]) },
          legend: {
            title: null,
            orient: 'top',
            symbolType: 'stroke',
            symbolSize: 900,
            symbolStrokeWidth: 1.4,
            columns: { expr: `width < ${names.length * (longest * PIXELS_PER_CHARACTER + KEY_PIXELS)} ? 1 : ${names.length}` },
          },
        },
      },
    },
    { mark: { type: 'rule', style: 'mean' }, encoding: { x, y: { ...y, field: 'least' }, y2: { field: 'greatest' }, tooltip } },
    { mark: { type: 'point', style: 'meanDot' }, encoding: { x, y, tooltip } },
  ]
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
