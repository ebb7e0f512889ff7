/** A chart of one's own: the common case from rows, or any vega-lite specification with its data in it. */
import type { Table } from '@loopwright/charts/table'
import type { Figure } from '../cells/figure.ts'
import { Mistake } from '../load/fault.ts'
import { checkNames, shown } from '../runner/knownNames.ts'
import { ownTable } from './ownTable.ts'
import { checkField, checkRows, decimalsOf, type OwnRow, ownText } from './rows.ts'

/** What a chart says beside its picture. */
export interface ChartWords {
  /** what these very data show, one sentence: the caption */
  readonly finding?: string
  /** what the picture shows, for those who cannot see it */
  readonly alt?: string
  readonly howToRead?: string
  /** of the cell, and name of its file; default: `chart-1`, … */
  readonly id?: string
  /** the table stands open, and is printed in the terminal. Default: false */
  readonly tableOpen?: boolean
}

/** A chart from rows. */
export interface RowsChart extends ChartWords {
  readonly rows: readonly OwnRow[]
  /** name of what goes along */
  readonly x: string
  /** name of the numbers that go up */
  readonly y: string
  /** one colour for each of its values */
  readonly series?: string
  /** names of the lower and the upper limit of what is shown */
  readonly interval?: readonly [low: string, high: string]
  /** default: a line where x is a number, bars otherwise */
  readonly mark?: 'line' | 'bar' | 'points' | 'area'
  /** default: the names */
  readonly xTitle?: string
  readonly yTitle?: string
  /** the axis begins at 0; default: of bars and areas alone */
  readonly zero?: boolean
}

/** A vega-lite specification, as anyone would write it. */
export type ChartSpec = Readonly<Record<string, unknown>>

const WORD_NAMES = ['finding', 'alt', 'howToRead', 'id', 'tableOpen']
const ROWS_NAMES = ['rows', 'x', 'y', 'series', 'interval', 'mark', 'xTitle', 'yTitle', 'zero', ...WORD_NAMES]
const MARKS = ['line', 'bar', 'points', 'area']
/** rows of the table beside a chart */
const TABLE_ROWS_MAX = 500
const HEIGHT = 300

/** @throws RangeError  if there is nothing to draw, or a name is none of the rows' */
export function ownChart(given: RowsChart | ChartSpec, words: ChartWords = {}): Figure {
  if (typeof given !== 'object' || given === null || Array.isArray(given))
    throw new Mistake(
      `a chart takes an object, not ${shown(given)}`,
      'Write `chart({ x: …, y: …, rows: … })`, or a vega-lite specification.',
    )
  return 'rows' in given || 'x' in given ? rowsChart(given as RowsChart) : specChart(given as ChartSpec, words)
}

function rowsChart(given: RowsChart): Figure {
  checkNames('a chart', given, ROWS_NAMES)
  const { rows, x, y, series, interval, mark, xTitle = x, yTitle = y } = given
  const names = checkRows('the chart', rows)
  checkField('the chart', 'x', x, names)
  checkField('the chart', 'y', y, names)
  if (series !== undefined) checkField('the chart', 'series', series, names)
  for (const limit of interval ?? []) checkField('the chart', 'a limit', limit, names)
  if (mark !== undefined && !MARKS.includes(mark))
    throw new Mistake(`a chart has no mark ${shown(mark)}`, `It may be ${MARKS.join(', ')}.`, 'mark')
  const numbers = rows.filter((row) => typeof row[y] === 'number' && Number.isFinite(row[y]))
  if (numbers.length === 0) throw new Mistake(`“${y}” has no number in any row: the chart would be empty`, 'y is a name of numbers.', y)
  const along = rows.every((row) => typeof row[x] === 'number') ? 'quantitative' : 'ordinal'
  const whole = rows.every((row) => Number.isInteger(row[x]))
  const drawn = mark ?? (along === 'quantitative' ? 'line' : 'bar')
  const zero = given.zero ?? (drawn === 'bar' || drawn === 'area')
  const stacked = drawn === 'bar' && series !== undefined ? { xOffset: { field: series } } : {}
  const colour = series === undefined ? {} : { color: { field: series, type: 'nominal', title: series } }
  const xChannel = {
    field: x,
    type: along,
    title: xTitle,
    sort: null,
    ...(along === 'ordinal' ? { axis: { labelAngle: 0 } } : whole ? { axis: { format: 'd', tickMinStep: 1 } } : {}),
    scale: { zero: false },
  }
  const yScale = { zero }
  const picture = {
    data: { values: rows },
    height: HEIGHT,
    encoding: { x: along === 'ordinal' ? { ...xChannel, scale: undefined } : xChannel, ...colour, ...stacked },
    layer: [
      ...(interval === undefined
        ? []
        : [
            {
              mark: { type: 'rule', strokeWidth: 2 },
              encoding: { y: { field: interval[0], type: 'quantitative', title: yTitle, scale: yScale }, y2: { field: interval[1] } },
            },
          ]),
      {
        mark:
          drawn === 'points'
            ? { type: 'point', filled: true, size: 60 }
            : drawn === 'line'
              ? { type: 'line', point: { size: 50 } }
              : { type: drawn },
        encoding: { y: { field: y, type: 'quantitative', title: yTitle, scale: yScale } },
      },
    ],
  }
  const decimals = decimalsOf(numbers.map((row) => row[y]))
  const [first, last] = [numbers[0]!, numbers.at(-1)!]
  const most = numbers.reduce((best, row) => ((row[y] as number) > (best[y] as number) ? row : best))
  const at = (row: OwnRow): string => `${ownText(row[y], decimals)} at ${ownText(row[x], decimalsOf([row[x]]))}`
  const summary = `${yTitle} by ${xTitle}: ${at(first)}${numbers.length > 1 ? `, ${at(last)} last; the most is ${at(most)}` : ''}.`
  const columns = [x, ...(series === undefined ? [] : [series]), y, ...(interval ?? [])].filter(
    (name, index, all) => all.indexOf(name) === index,
  )
  const heads = Object.fromEntries(columns.map((name) => [name, name === x ? xTitle : name === y ? yTitle : name]))
  const finding = given.finding ?? `${yTitle} by ${xTitle}.`
  return figure(picture, finding, { alt: summary, ...given }, ownTable(rows, { caption: `${yTitle} by ${xTitle}`, columns: heads }))
}

function specChart(spec: ChartSpec, words: ChartWords): Figure {
  checkNames('what is said of a chart', words, WORD_NAMES)
  if (!['mark', 'layer', 'hconcat', 'vconcat', 'concat', 'repeat', 'facet', 'spec'].some((name) => name in spec))
    throw new Mistake(
      `a chart is drawn from rows, or by a vega-lite specification; this has ${Object.keys(spec).join(', ') || 'nothing'}`,
      'Write `chart({ x: …, y: …, rows: … })`, or a specification with `data`, `mark` and `encoding`.',
      'chart',
    )
  const data = dataOf(spec)
  for (const each of data)
    if ('url' in each)
      throw new Mistake(
        'the chart takes its data from an address, and a page asks nobody for anything',
        'Write `data: { values: rows }`.',
        'url',
      )
  const values = data.flatMap(({ values: all }) => (Array.isArray(all) ? [all as unknown[]] : []))
  if (data.length === 0) throw new Mistake('the chart has no data', 'Write `data: { values: rows }`.', 'chart')
  if (values.length === data.length && values.every((rows) => rows.length === 0))
    throw new Mistake('the data of the chart have no rows: there is nothing to show', 'Look at what they are made of.', 'values')
  const rows = values.flat().filter((row): row is OwnRow => typeof row === 'object' && row !== null)
  if (!JSON.stringify(spec).includes('"transform"') && rows.length > 0 && values.length === data.length) {
    const names = [...new Set(rows.flatMap((row) => Object.keys(row)))]
    for (const field of fieldsOf(spec)) if (!names.includes(field.split(/[.[]/)[0]!)) checkField('the chart', 'a field', field, names)
  }
  const title = typeof spec.title === 'string' ? spec.title : ((spec.title as { text?: unknown } | undefined)?.text ?? null)
  const finding = words.finding ?? (typeof title === 'string' ? title : 'A chart of this notebook.')
  const alt = words.alt ?? (typeof spec.description === 'string' ? spec.description : finding)
  // the caption says the title; how it is drawn is the page's matter
  const { title: _, usermeta: __, ...picture } = spec
  return figure(picture, finding, { ...words, alt }, tableOfData(rows))
}

function tableOfData(rows: readonly OwnRow[]): Table {
  const plain = rows
    .slice(0, TABLE_ROWS_MAX)
    .map((row) => Object.fromEntries(Object.entries(row).map(([name, value]) => [name, plainValue(value)])))
  if (plain.length === 0) return ownTable([{ data: 'made by the chart itself' }], { caption: 'Data of the chart' })
  const note = rows.length > TABLE_ROWS_MAX ? `The first ${TABLE_ROWS_MAX} of ${rows.length} rows.` : undefined
  return ownTable(plain, { caption: 'Data of the chart', ...(note === undefined ? {} : { note }) })
}

const plainValue = (value: unknown): string | number | boolean | null =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? value
    : value === null || value === undefined
      ? null
      : JSON.stringify(value)

function figure(spec: object, finding: string, words: ChartWords, table: Table): Figure {
  return {
    finding,
    picture: { kind: 'chart', spec },
    alt: words.alt ?? finding,
    howToRead: words.howToRead ?? '',
    table,
    tableOpen: words.tableOpen ?? false,
  }
}

type Part = Readonly<Record<string, unknown>>

/** Every object of a specification but those of its data. */
function* partsOf(part: unknown): Generator<Part> {
  if (Array.isArray(part)) for (const each of part) yield* partsOf(each)
  else if (typeof part === 'object' && part !== null) {
    yield part as Part
    for (const [name, value] of Object.entries(part)) if (name !== 'data' && name !== 'datasets') yield* partsOf(value)
  }
}

function dataOf(spec: ChartSpec): Part[] {
  const named = Object.values((spec.datasets ?? {}) as Part).map((values) => ({ values }))
  const own = [...partsOf(spec)].flatMap(({ data }) =>
    typeof data === 'object' && data !== null && !('name' in data) ? [data as Part] : [],
  )
  return [...own, ...named]
}

function fieldsOf(spec: ChartSpec): string[] {
  return [...partsOf(spec)].flatMap(({ encoding }) =>
    [...partsOf(encoding)].flatMap(({ field }) => (typeof field === 'string' ? [field] : [])),
  )
}
