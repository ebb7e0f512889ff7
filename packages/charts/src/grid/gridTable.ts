/** A grid as a heat table: a cell for each setting of two factors, its shade by the mean output; further factors make further blocks. */
import type { GridPoint } from '@loopwright/study'
import type { ChartRow, Figure } from '../draw/figure.ts'
import { formatNumber, formatShare, formatWithHalfWidth } from '../table/format.ts'
import { frame, type Layer } from '../draw/frame.ts'
import {
  axisWords,
  CARRIERS,
  fieldNames,
  type GridNumbers,
  type GridSides,
  gridSides,
  levelWords,
  meanOf,
  settingWords,
  unitsText,
} from './gridParts.ts'
import { type ColumnOf, type Table, tableOf } from '../table/table.ts'
import { meanFields } from '../table/tableFields.ts'

export interface GridTableOptions {
  /** what one window is called. Default: "window" */
  readonly per?: string
}

/** steps of the ramp */
const STEPS = 9
/** a row with one number, and one with the chance of the plan below it */
const ROW_PIXELS = 30
const ROW_PLAN_PIXELS = 42
const PIXELS_PER_CHARACTER = 8
/** more rows would not be read; then only the block of the best setting is drawn */
const ROWS_MAX = 60
const NINE_OF_TEN = 0.9

/**
 * Cells in rows and columns, the more units the stronger the shade, with the mean and the chance of the plan in each.
 *
 * @param result  of two factors or more; further factors make a block for each of their settings
 * @throws RangeError  if there are fewer than two factors
 */
export function gridTable(result: GridNumbers, { per = 'window' }: GridTableOptions = {}): Figure {
  const { factors, points } = result
  const sides = gridSides(factors)
  if (sides.short === null) throw new RangeError('a heat table needs two factors; draw one factor as a curve')
  const { blocks, all } = blocksOf(result, sides)
  const rows = cellRows(result, sides, blocks, per)
  const found = finding(result, per)
  const [long, short] = [factors[sides.long]!, factors[sides.short]!]
  const alt = `Table of shaded cells: mean units per ${per} by ${axisWords(long).title} in rows and ${axisWords(short).title} in columns${blocks.length > 1 ? `, ${blocks.length} blocks` : ''}. ${found}`
  const planned = points.some(({ meetsPlan }) => meetsPlan !== null)
  const lines = blocks.length * (long.levels.length + (sides.others.length > 0 ? 1 : 0))
  return {
    spec: frame({
      description: alt,
      height: lines * (planned ? ROW_PLAN_PIXELS : ROW_PIXELS),
      ownColours: true,
      rows,
      layer: layers(result, sides, rows, planned),
    }),
    rows,
    swapRows: false,
    finding: found,
    alt,
    readLine: [
      `Numbers: mean units per ${per}${planned ? `; below them, how many of the ${per}s simulated met the plan` : ''}. The stronger the shade, the more units; the shades begin at the least mean, not at 0.`,
      'Full frame: makes most.',
      result.base === null ? '' : 'Dashed frame: what the others are set beside.',
      blocks.length < all ? `Only the block of the best setting is drawn; the table has all ${all}.` : '',
    ]
      .filter((part) => part !== '')
      .join(' '),
    table: settingsTable(result, per),
  }
}

/** Settings of the other factors, one block each; only that of the best where all would be too long. */
function blocksOf(
  { factors, points, best }: GridNumbers,
  { long, others }: GridSides,
): { blocks: readonly (readonly number[])[]; all: number } {
  const keys = new Map(
    points.map(({ levels }) => [others.map((factor) => levels[factor]!).join(), others.map((factor) => levels[factor]!)]),
  )
  const blocks = [...keys.values()]
  const fits = blocks.length * (factors[long]!.levels.length + 1) <= ROWS_MAX
  const own = points[best ?? 0]!.levels
  return { blocks: fits ? blocks : [others.map((factor) => own[factor]!)], all: blocks.length }
}

function cellRows(
  result: GridNumbers,
  { long, short, others }: GridSides,
  blocks: readonly (readonly number[])[],
  per: string,
): ChartRow[] {
  const { factors, points, base, best } = result
  const means = points.flatMap((point) => meanOf(point) ?? [])
  const [least, most] = [Math.min(...means), Math.max(...means)]
  return blocks.flatMap((block, place): ChartRow[] => {
    const heading = others.map((factor, index) => levelWords(factors[factor]!, block[index]!)).join(', ')
    const cells = points.flatMap((point, index): ChartRow[] => {
      if (others.some((factor, at) => point.levels[factor] !== block[at])) return []
      const mean = meanOf(point)
      return [
        {
          kind: 'cell',
          row: `${place} ${point.levels[long]}`,
          column: `${point.levels[short!]}`,
          step: mean === null || most === least ? 0 : Math.round(((mean - least) / (most - least)) * (STEPS - 1)),
          text: unitsText(point).split(' ± ')[0]!,
          plan: point.meetsPlan === null ? '' : formatShare(point.meetsPlan.share),
          best: index === best,
          base: index === base,
          tip: `${settingWords(factors, point.levels)}: ${unitsText(point)} units per ${per}${point.meetsPlan === null ? '' : `, plan met in ${point.meetsPlan.successes} of ${point.meetsPlan.n}`}${point.gridlocks > 0 ? `; stood still in ${point.gridlocks}` : ''}`,
        },
      ]
    })
    return heading === '' ? cells : [{ kind: 'heading', row: `${place} heading`, column: '0', heading }, ...cells]
  })
}

function layers({ factors }: GridNumbers, { long, short }: GridSides, rows: readonly ChartRow[], planned: boolean): Layer[] {
  const [down, across] = [axisWords(factors[long]!), axisWords(factors[short!]!)]
  const keys = [...new Set(rows.map((each) => String(each.row)))]
  const rowLabels = Object.fromEntries(keys.map((key) => [key, down.levels[Number(key.split(' ')[1])] ?? '']))
  const columns = across.levels.map((_, index) => `${index}`)
  const x = {
    field: 'column',
    type: 'nominal',
    title: across.title,
    scale: { domain: columns, paddingInner: 0.05, paddingOuter: 0.02 },
    axis: {
      orient: 'top',
      domain: false,
      ticks: false,
      labelAngle: 0,
      labelExpr: `${JSON.stringify(Object.fromEntries(across.levels.map((level, index) => [`${index}`, level])))}[datum.label]`,
      labelLimit: { expr: `width / ${columns.length} - 4` },
    },
  } as const
  const y = {
    field: 'row',
    type: 'nominal',
    title: down.title,
    sort: null,
    scale: { domain: keys, paddingInner: 0.1, paddingOuter: 0.02 },
    axis: { labelExpr: `${JSON.stringify(rowLabels)}[datum.label]`, labelLimit: 110 },
  } as const
  const ramp = (range: 'ramp' | 'heatmap') =>
    ({
      field: 'step',
      type: 'ordinal',
      scale: { domain: Array.from({ length: STEPS }, (_, index) => index), range },
      legend: null,
    }) as const
  const tooltip = { field: 'tip' } as const
  const longest = Math.max(...rows.map(({ text }) => String(text ?? '').length))
  const fits = (field: string, characters: number) => ({
    expr: `width / ${columns.length} < ${characters * PIXELS_PER_CHARACTER + 4} ? '' : datum.${field}`,
  })
  const cells = [{ filter: "datum.kind === 'cell'" }]
  const framed = (field: 'best' | 'base', style: string): Layer => ({
    transform: [{ filter: `datum.${field} === true` }],
    mark: { type: 'rect', style },
    encoding: { x, y, tooltip },
  })
  return [
    { transform: cells, mark: { type: 'rect', style: 'cell' }, encoding: { x, y, color: ramp('ramp'), tooltip } },
    framed('base', 'baseCell'),
    framed('best', 'chosenCell'),
    {
      transform: cells,
      mark: { type: 'text', style: 'words', dy: planned ? -7 : 0, text: fits('text', longest) },
      encoding: { x, y, color: ramp('heatmap'), tooltip },
    },
    ...(planned
      ? [
          {
            transform: cells,
            mark: { type: 'text', style: 'letters', dy: 9, text: fits('plan', 5) },
            encoding: { x, y, color: ramp('heatmap'), tooltip },
          } satisfies Layer,
        ]
      : []),
    ...(rows.some(({ kind }) => kind === 'heading')
      ? [
          {
            transform: [{ filter: "datum.kind === 'heading'" }],
            mark: { type: 'text', style: 'wordsStrong', align: 'left', x: 0, limit: { expr: 'width' } },
            encoding: { y, text: { field: 'heading' } },
          } satisfies Layer,
        ]
      : []),
  ]
}

/** What the best is, and how many settings meet the plan. */
function finding({ factors, points, best, maybeBest }: GridNumbers, per: string): string {
  if (best === null) return 'Every setting stood still in some window, or none has been run.'
  const rivals = maybeBest.length - 1
  const others = rivals <= 0 ? '' : `; ${rivals} ${rivals === 1 ? 'other cannot be told from it' : 'others cannot be told from it'}`
  const most = `Most units: ${unitsText(points[best]!)} a ${per} with ${settingWords(factors, points[best]!.levels)}${others}.`
  const planned = points.filter(({ meetsPlan }) => meetsPlan !== null)
  if (planned.length === 0) return most
  const met = planned.filter(({ meetsPlan, gridlocks }) => meetsPlan!.share >= NINE_OF_TEN && gridlocks === 0).length
  const how =
    met === 0
      ? 'No setting meets'
      : met === planned.length
        ? `All ${met} settings meet`
        : `${met} of ${planned.length} settings ${met === 1 ? 'meets' : 'meet'}`
  return `${most} ${how} the plan in nine of ten ${per}s.`
}

function settingsTable({ factors, points, base, best }: GridNumbers, per: string): Table {
  const planned = points.some(({ meetsPlan }) => meetsPlan !== null)
  const still = points.some(({ gridlocks }) => gridlocks > 0)
  const names = fieldNames(factors.map(({ name }) => (name === CARRIERS ? CARRIERS : `set ${name}`)))
  const narrow = factors.length > 2
  return tableOf<GridPoint>({
    caption: `Every setting, units per ${per}`,
    columns: [
      ...factors.map(
        (factor, at): ColumnOf<GridPoint> => ({
          head: axisWords(factor).title,
          text: ({ levels }) => axisWords(factor).levels[levels[at]!]!,
          data: [
            [
              names[at]!,
              factor.name === CARRIERS ? 'number of carriers' : `level of ${factor.name}`,
              ({ levels }) => factor.levels[levels[at]!]!,
            ],
          ],
        }),
      ),
      {
        head: 'n',
        text: ({ units }) => formatNumber(units.length, 0),
        data: [['replications', `simulated ${per}s`, ({ units }) => units.length]],
      },
      { head: 'Mean ± 95 %', text: unitsText, data: meanFields('units', `units per ${per}`, ({ mean }) => mean) },
      {
        head: 'P10',
        pageOnly: narrow,
        text: ({ p10 }) => (p10 === null ? '–' : formatNumber(p10.point, 0)),
        data: [['p10', `units that nine of ten ${per}s exceed`, ({ p10 }) => p10?.point ?? null]],
      },
      ...(planned ? [planColumn(per)] : []),
      {
        head: 'More than\nthe base',
        pageOnly: narrow,
        text: ({ toBase }, index) => (index === base ? 'base' : toBase === null ? '–' : moreText(toBase)),
        data: meanFields('more', `units per ${per} more than the base`, ({ toBase }) => toBase),
      },
      ...(still
        ? [
            {
              head: 'Stood still\nin',
              pageOnly: true,
              text: ({ gridlocks }: GridPoint) => formatNumber(gridlocks, 0),
              data: [['gridlocks', `${per}s that ended in gridlock`, ({ gridlocks }: GridPoint) => gridlocks] as const],
            },
          ]
        : []),
    ],
    rows: points,
    marked: (_, index) => index === best,
    note: 'P10: nine of ten are better.',
  })
}

const planColumn = (per: string): ColumnOf<GridPoint> => ({
  head: 'Plan\nmet in',
  text: ({ meetsPlan }) => (meetsPlan === null ? '–' : formatShare(meetsPlan.share)),
  data: [
    ['plan_met', `share of ${per}s, 0 … 1, that met the plan`, ({ meetsPlan }) => meetsPlan?.share ?? null],
    ['plan_met_low', 'lower limit of the chance, 95 %', ({ meetsPlan }) => meetsPlan?.low ?? null],
    ['plan_met_high', 'upper limit of the chance, 95 %', ({ meetsPlan }) => meetsPlan?.high ?? null],
  ],
})

function moreText({ mean, halfWidth }: NonNullable<GridPoint['toBase']>): string {
  return halfWidth === 0 ? formatNumber(mean, 0) : formatWithHalfWidth(mean, halfWidth, 1)
}
