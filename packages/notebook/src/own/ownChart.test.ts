import { describe, expect, test } from 'vitest'
import { Mistake } from '../load/fault.ts'
import { chartFault, drawnChart } from './drawnChart.ts'
import { type ChartSpec, ownChart, type RowsChart } from './ownChart.ts'

const ROWS = [
  { carriers: 8, units: 320, low: 316, high: 324, line: 'today' },
  { carriers: 9, units: 328.5, low: 326, high: 331, line: 'today' },
  { carriers: 10, units: 331, low: 330, high: 332, line: 'proposal' },
]
const spec = (figure: ReturnType<typeof ownChart>): object => {
  if (figure.picture.kind !== 'chart') throw new Error('no chart')
  return figure.picture.spec
}
const refused = (given: unknown): Mistake => {
  try {
    ownChart(given as RowsChart)
  } catch (error) {
    if (error instanceof Mistake) return error
    throw error
  }
  throw new Error('it was taken')
}

describe('from rows', () => {
  test.each<[string, Partial<RowsChart>, number]>([
    ['a line, with its points', {}, 6],
    ['bars where x is words', { x: 'line', mark: 'bar' }, 3],
    ['intervals', { interval: ['low', 'high'] }, 9],
    ['one colour for each of a series', { series: 'line', mark: 'points' }, 3],
    ['an area', { mark: 'area' }, 3],
  ])('%s', async (_, change, marks) => {
    const figure = ownChart({ x: 'carriers', y: 'units', rows: ROWS, ...change })
    const drawn = await drawnChart(spec(figure))
    expect([drawn.warnings, drawn.marks]).toEqual([[], marks])
    expect(await chartFault(spec(figure))).toBeNull()
  })
  test('says what it shows, and has its numbers in a table', () => {
    const { finding, alt, table } = ownChart({ x: 'carriers', y: 'units', rows: ROWS, yTitle: 'Units per shift' })
    expect([finding, alt]).toEqual([
      'Units per shift by carriers.',
      'Units per shift by carriers: 320.0 at 8, 331.0 at 10 last; the most is 331.0 at 10.',
    ])
    expect(table.columns.map(({ head }) => head)).toEqual(['carriers', 'Units per shift'])
    expect(table.rows.map(({ values }) => values)).toEqual(ROWS.map(({ carriers, units }) => [carriers, units]))
  })
  test.each<[string, unknown, string, string]>([
    ['no rows', { x: 'a', y: 'b', rows: [] }, 'the chart has no rows: there is nothing to show', 'Look at'],
    ['no list', { x: 'a', y: 'b', rows: 3 }, 'the chart takes rows as a list of objects, not 3', 'Write'],
    ['a misspelt name', { x: 'carriers', y: 'unit', rows: ROWS }, 'y of the chart is "unit", which no row has', 'Did you mean "units"?'],
    ['a misspelt option', { x: 'carriers', y: 'units', row: [], rows: ROWS }, 'a chart knows nothing called "row"', 'Did you mean "rows"?'],
    [
      'words where numbers go',
      { x: 'carriers', y: 'line', rows: ROWS },
      '“line” has no number in any row: the chart would be empty',
      'numbers',
    ],
    ['a mark that there is not', { x: 'carriers', y: 'units', rows: ROWS, mark: 'pie' }, 'a chart has no mark "pie"', 'line, bar'],
    ['a value that is none', { x: 'a', y: 'b', rows: [{ a: [1], b: 1 }] }, '“a” in row 1 of the chart is a list', 'A value is'],
    ['nothing', 3, 'a chart takes an object, not 3', 'Write'],
  ])('%s is refused', (_, given, message, fix) => {
    const mistake = refused(given)
    expect(mistake.message).toBe(message)
    expect(mistake.fix).toContain(fix)
  })
})

describe('by a specification, as anyone would write it', () => {
  const BARS: ChartSpec = {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    title: 'Units by carriers',
    description: 'Three bars.',
    data: { values: ROWS },
    mark: 'bar',
    encoding: { x: { field: 'carriers', type: 'ordinal' }, y: { field: 'units', type: 'quantitative' } },
  }
  test('its title is the caption, its description what those read who cannot see it', async () => {
    const figure = ownChart(BARS)
    expect([figure.finding, figure.alt]).toEqual(['Units by carriers', 'Three bars.'])
    expect((await drawnChart(spec(figure))).marks).toBe(3)
    expect(figure.table.rows).toHaveLength(3)
  })
  test.each<[string, ChartSpec, number]>([
    ['layers', { data: { values: ROWS }, encoding: BARS.encoding, layer: [{ mark: 'bar' }, { mark: 'rule' }] }, 6],
    ['pictures beside each other', { hconcat: [BARS, { ...BARS, title: 'Again' }] }, 6],
    ['facets', { ...BARS, encoding: { ...(BARS.encoding as object), row: { field: 'line', type: 'nominal' } } }, 3],
    ['data by name', { ...BARS, data: { name: 'rows' }, datasets: { rows: ROWS } }, 3],
    [
      'transforms',
      { ...BARS, transform: [{ calculate: '2 * datum.units', as: 'double' }], encoding: { x: { field: 'double', type: 'quantitative' } } },
      3,
    ],
    [
      'data made by the chart',
      { data: { sequence: { start: 0, stop: 5, as: 'n' } }, mark: 'point', encoding: { x: { field: 'n', type: 'quantitative' } } },
      5,
    ],
  ])('%s', async (_, given, marks) => {
    const drawn = await drawnChart(spec(ownChart(given)))
    expect([drawn.warnings, drawn.marks]).toEqual([[], marks])
  })
  test.each<[string, ChartSpec, string]>([
    ['no data', { mark: 'bar' }, 'the chart has no data'],
    ['no rows', { ...BARS, data: { values: [] } }, 'the data of the chart have no rows: there is nothing to show'],
    [
      'an address',
      { ...BARS, data: { url: 'https://elsewhere.example/a.csv' } },
      'the chart takes its data from an address, and a page asks nobody for anything',
    ],
    ['a field that no row has', { ...BARS, encoding: { x: { field: 'carrier' } } }, 'a field of the chart is "carrier", which no row has'],
    ['no mark', { data: { values: ROWS } }, 'a chart is drawn from rows, or by a vega-lite specification; this has data'],
  ])('%s is refused', (_, given, message) => expect(refused(given).message).toBe(message))
  test.each<[string, ChartSpec, string]>([
    ['a filter that leaves nothing', { ...BARS, transform: [{ filter: 'datum.units > 1000' }] }, 'the chart is empty'],
    ['a mark that there is not', { ...BARS, mark: 'pie' }, 'the chart cannot be drawn'],
  ])('%s is found when it is drawn', async (_, given, message) => expect(await chartFault(spec(ownChart(given)))).toContain(message))
})
