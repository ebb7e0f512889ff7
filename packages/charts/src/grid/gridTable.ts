/** A grid as a heat table: a cell for each setting of two factors, its shade by the mean output; further factors make further blocks. */
import type { GridPoint } from '@loopwright/study/compare'
import type { Ink } from '../drawing/ink.ts'
import type { Mark } from '../drawing/drawing.ts'
import type { Figure } from '../draw/figure.ts'
import { formatNumber, formatShare, formatWithHalfWidth } from '../table/format.ts'
import {
  axisWords,
  CARRIERS,
  fieldNames,
  type GridNumbers,
  type GridSides,
  gridSides,
  levelWords,
  pointMean,
  settingWords,
  meanText,
  unitsText,
} from './gridParts.ts'
import { type ColumnOf, type Table, tableOf } from '../table/table.ts'
import { meanFields } from '../table/tableFields.ts'

/** How the table of a grid is told. */
export interface GridTableOptions {
  /** what one window is called. Default: "window" */
  readonly per?: string
}

/** steps of the ramp */
const STEPS = 9
/** a row with one number, and one with the chance of the plan below it */
const ROW_PIXELS = 30
const ROW_PLAN_PIXELS = 42
/** more rows would not be read; then only the block of the best setting is drawn */
const ROWS_MAX = 60
const NINE_OF_TEN = 0.9

/**
 * Cells in rows and columns, the more units the stronger the shade, with the mean and the chance of the plan in each.
 *
 * @param result  of two factors or more; further factors make a block for each of their settings
 * @throws RangeError  if there are fewer than two factors
 * @example gridTable(await runGrid([2, 3].map((count) => ({ line: withCarriers(line, count), plan: null })), { factors: [{ name: 'carriers', levels: ['2', '3'] }, { name: 'drive.speed', levels: ['15 m/min'] }], replications: 5 }, { seed: '1', workers: 0 })).finding // => 'Most units: 124 ± 5 a window with 3 carriers with drive.speed 15 m/min.'
 */
export function gridTable(result: GridNumbers, { per = 'window' }: GridTableOptions = {}): Figure {
  const { factors, points } = result
  const sides = gridSides(factors)
  if (sides.short === null) throw new RangeError('a heat table needs two factors; draw one factor as a curve')
  const { blocks, all } = blocksOf(result, sides)
  const found = finding(result, per)
  const [long, short] = [factors[sides.long]!, factors[sides.short]!]
  const alt = `Table of shaded cells: mean units per ${per} by ${axisWords(long).title} in rows and ${axisWords(short).title} in columns${blocks.length > 1 ? `, ${blocks.length} blocks` : ''}. ${found}`
  const planned = points.some(({ meetsPlan }) => meetsPlan !== null)
  const lines = blocks.length * (long.levels.length + (sides.others.length > 0 ? 1 : 0))
  return {
    drawing: drawingOf(result, sides, blocks, { per, planned, rowPixels: planned ? ROW_PLAN_PIXELS : ROW_PIXELS, lines }),
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

interface Look {
  readonly per: string
  readonly planned: boolean
  readonly rowPixels: number
  readonly lines: number
}

/** A line of cells for each level of the long factor, below the heading of its block where there are several. */
function drawingOf(
  result: GridNumbers,
  { long, short, others }: GridSides,
  blocks: readonly (readonly number[])[],
  { per, planned, rowPixels, lines }: Look,
): Figure['drawing'] {
  const { factors, points } = result
  const [down, across] = [axisWords(factors[long]!), axisWords(factors[short!]!)]
  const heads = others.length > 0 ? 1 : 0
  const first = (block: number): number => block * (down.levels.length + heads) + heads
  const headings = blocks.flatMap((block, place): Mark[] => {
    const text = others.map((factor, index) => levelWords(factors[factor]!, block[index]!)).join(', ')
    return text === '' ? [] : [{ mark: 'words', x: 'from', y: first(place) - 0.4, text, ink: 'strong', beside: '' }]
  })
  const means = points.flatMap((point) => pointMean(point) ?? [])
  const span = [Math.min(...means), Math.max(...means)] as const
  const cells = points.flatMap((point): Mark[] => {
    const place = blocks.findIndex((block) => others.every((factor, at) => point.levels[factor] === block[at]))
    return place < 0
      ? []
      : cellMarks(result, point, { row: first(place) + point.levels[long]!, column: point.levels[short!]!, span, per, planned })
  })
  return {
    heightPixels: rowPixels * lines,
    across: {
      from: 0,
      to: across.levels.length,
      title: across.title,
      above: true,
      ticks: across.levels.map((text, index) => ({ at: index + 0.5, text })),
    },
    up: {
      from: lines,
      to: 0,
      title: down.title,
      ticks: blocks.flatMap((_, place) => down.levels.map((text, level) => ({ at: first(place) + level + 0.5, text }))),
    },
    // frames lie on the cells around them
    marks: [...headings, ...cells.filter(({ ink }) => !FRAMES.includes(ink)), ...cells.filter(({ ink }) => FRAMES.includes(ink))],
  }
}

const FRAMES: readonly Ink[] = ['baseCell', 'chosenCell']

interface CellPlace {
  readonly row: number
  readonly column: number
  /** least and greatest mean of all settings */
  readonly span: readonly [number, number]
  readonly per: string
  readonly planned: boolean
}

/** A shaded cell with its mean, the chance of the plan below it, and the frame of the best or of the base. */
function cellMarks(
  { factors, points, base, best }: GridNumbers,
  point: GridPoint,
  { row, column, span: [least, most], per, planned }: CellPlace,
): Mark[] {
  const mean = pointMean(point)
  const step = mean === null || most === least ? 0 : Math.round(((mean - least) / (most - least)) * (STEPS - 1))
  const x = [column + 0.03, column + 0.97] as const
  const y = [row + 0.04, row + 0.96] as const
  const tip = `${settingWords(factors, point.levels)}: ${unitsText(point)} units per ${per}${point.meetsPlan === null ? '' : `, plan met in ${point.meetsPlan.successes} of ${point.meetsPlan.n}`}${point.gridlocks > 0 ? `; stood still in ${point.gridlocks}` : ''}`
  const half = (of: readonly [number, number], words: readonly string[]): Mark => ({
    mark: 'area',
    x,
    y: of,
    ink: `ramp ${step}`,
    words,
    wordsInk: `on ramp ${step}`,
    tip,
  })
  const middle = row + (planned ? 0.52 : 0.96)
  const frames: Mark[] = [points.indexOf(point) === base ? 'baseCell' : null, points.indexOf(point) === best ? 'chosenCell' : null].flatMap(
    (ink) => (ink === null ? [] : [{ mark: 'area', x, y, ink: ink as Ink } as Mark]),
  )
  return [
    half([y[0], middle], [unitsText(point), meanText(point)]),
    ...(planned ? [half([middle, y[1]], [point.meetsPlan === null ? '' : formatShare(point.meetsPlan.share)])] : []),
    ...frames,
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
