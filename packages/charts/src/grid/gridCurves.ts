/** A grid as curves: mean output against one factor, a curve for each level of another. */
import type { GridPoint } from '@loopwright/study/compare'
import type { Mark } from '../drawing/drawing.ts'
import { axisBegin } from '../draw/axisBegin.ts'
import type { Figure } from '../draw/figure.ts'
import { formatNumber } from '../table/format.ts'
import { type CurvePoint, DASHES, endLabels, HEIGHT, planMarks, SHAPES } from './gridLabels.ts'
import {
  axisWords,
  CARRIERS,
  fieldNames,
  type GridNumbers,
  type GridSides,
  gridSides,
  levelNumbers,
  levelWords,
  pointMean,
  settingWords,
  unitsText,
} from './gridParts.ts'
import { type ColumnOf, type Table, tableOf } from '../table/table.ts'

/** How the curves of a grid are told. */
export interface GridCurvesOptions {
  /** what one window is called. Default: "window" */
  readonly per?: string
}

/** more curves would not be told apart */
const CURVES_MAX = 8
/** of more curves the caption names the first and the last */
const NAMED_MAX = 4

/**
 * Dots with the intervals of their means, joined by straight lines, with the name of each curve at its end.
 *
 * @param result  of one factor or more; factors beyond the second stay as at the best setting
 * @throws RangeError  if no setting has a replication
 * @example gridCurves(await runGrid([2, 3].map((count) => ({ line: withCarriers(line, count), plan: null })), { factors: [{ name: 'carriers', levels: ['2', '3'] }], replications: 5 }, { seed: '1', workers: 0 })).finding // => 'Most units: 124 ± 5 at 3 carriers.'
 */
export function gridCurves(result: GridNumbers, { per = 'window' }: GridCurvesOptions = {}): Figure {
  const { factors, points } = result
  if (points.every(({ units }) => units.length === 0)) throw new RangeError('a grid without a replication cannot be drawn')
  const sides = gridSides(factors)
  const shown = shownPoints(result, sides)
  const series = seriesOf(result, sides)
  const rows = shown.flatMap((point) => curveRow(result, sides, series, point, per))
  const span = verticalSpan(shown)
  const found = finding(result, sides, shown, series)
  const [long, short] = [factors[sides.long]!, sides.short === null ? null : factors[sides.short]!]
  const fixed = fixedWords(result, sides)
  const alt = `Mean units per ${per} against ${axisWords(long).title}${short === null ? '' : `, a curve for each level of ${axisWords(short).title}`}${fixed === '' ? '' : `; ${fixed}`}. ${found}`
  const plan = planOf(shown)
  const drawn = short !== null && series.length < short.levels.length ? `Of ${short.levels.length} curves ${series.length} are drawn.` : ''
  const random = shown.some(({ mean }) => (mean?.halfWidth ?? 0) > 0)
  return {
    drawing: drawingOf(result, sides, series, rows, { span, plan, per }),
    finding: found,
    alt,
    readLine: [
      random
        ? 'Marks: mean; the bar through a mark is the 95 % interval of that mean. The lines only lead the eye.'
        : 'The lines only lead the eye.',
      fixed === '' ? '' : `Drawn with ${fixed}, as at the best setting.`,
      plan === null ? '' : 'Dashed, level: the plan.',
      result.best === null ? '' : 'Large dot: makes most.',
      drawn,
      span[0] > 0 ? `The upright axis begins at ${formatNumber(span[0], 0)}.` : '',
    ]
      .filter((part) => part !== '')
      .join(' '),
    table: crossTable(result, sides, { shown, fixed, random, per }),
  }
}

/** Those with the other factors as at the best setting. */
function shownPoints({ points, best }: GridNumbers, { others }: GridSides): GridPoint[] {
  const at = points[best ?? 0]!.levels
  return points.filter(({ levels }) => others.every((factor) => levels[factor] === at[factor]))
}

function fixedWords({ factors, points, best }: GridNumbers, { others }: GridSides): string {
  const at = points[best ?? 0]!.levels
  return others.map((factor) => levelWords(factors[factor]!, at[factor]!)).join(', ')
}

/** Levels of the short factor that are drawn: all, or evenly chosen from the first to the last. */
function seriesOf({ factors }: GridNumbers, { short }: GridSides): number[] {
  if (short === null) return [0]
  const count = factors[short]!.levels.length
  const drawn = Math.min(count, CURVES_MAX)
  return Array.from({ length: drawn }, (_, index) => (drawn === 1 ? 0 : Math.round((index * (count - 1)) / (drawn - 1))))
}

function curveRow(
  { factors, points, best }: GridNumbers,
  { long, short }: GridSides,
  series: readonly number[],
  point: GridPoint,
  per: string,
): CurvePoint[] {
  const level = point.levels[long]!
  const curve = short === null ? 0 : point.levels[short]!
  const centre = pointMean(point)
  if (!series.includes(curve) || centre === null) return []
  return [
    {
      at: levelNumbers(factors[long]!.levels)?.values[level] ?? level,
      curve,
      mean: centre,
      low: point.mean?.low ?? centre,
      high: point.mean?.high ?? centre,
      best: points.indexOf(point) === best,
      tip: `${settingWords(factors, point.levels)}: ${unitsText(point)} units per ${per}`,
    },
  ]
}

const planOf = (shown: readonly GridPoint[]): number | null => {
  const plans = new Set(shown.map(({ plan }) => plan))
  return plans.size === 1 ? shown[0]!.plan : null
}

/** From a round number below all marks, or 0 where they reach down to less than half, to a little above them. */
function verticalSpan(shown: readonly GridPoint[]): [number, number] {
  const marks = shown.flatMap(({ mean, units }) => (mean === null ? units.slice(0, 1) : [mean.low, mean.high]))
  const plan = planOf(shown)
  const top = Math.max(1, ...marks, plan ?? 0)
  const least = Math.min(...marks, plan ?? top)
  const low = axisBegin(least, top, 0.1)
  return [low, top + (top - low) * 0.06]
}

interface Marks {
  readonly span: readonly [number, number]
  readonly plan: number | null
  readonly per: string
}

function drawingOf(
  { factors }: GridNumbers,
  { long, short }: GridSides,
  series: readonly number[],
  rows: readonly CurvePoint[],
  { span, plan, per }: Marks,
): Figure['drawing'] {
  const along = axisWords(factors[long]!)
  const numbers = [...(levelNumbers(factors[long]!.levels)?.values ?? along.levels.keys())]
  const room = (Math.max(...numbers) - Math.min(...numbers)) * 0.04 || 0.5
  return {
    heightPixels: HEIGHT,
    across: {
      from: Math.min(...numbers) - room,
      to: Math.max(...numbers) + room,
      title: along.title,
      ticks: numbers.map((at, index) => ({ at, text: along.levels[index]! })),
    },
    up: { from: span[0], to: span[1], title: `Units per ${per}`, grid: true, cut: span[0] > 0 },
    marks: [
      ...(plan === null ? [] : planMarks(plan, rows, span)),
      ...series.map(
        (curve, index): Mark => ({
          mark: 'path',
          points: rows
            .filter((each) => each.curve === curve)
            .sort((a, b) => a.at - b.at)
            .map(({ at, mean }) => [at, mean] as const),
          ink: 'line',
          dash: DASHES[index]!,
        }),
      ),
      ...rows.flatMap(({ at, curve, mean, low, high, best, tip }): Mark[] => [
        ...(high > low ? [{ mark: 'rule', x: [at, at], y: [low, high], ink: 'whisker', ends: 3, tip } satisfies Mark] : []),
        best
          ? { mark: 'dot', x: at, y: mean, ink: 'chosenDot', radius: 6, tip }
          : { mark: 'dot', x: at, y: mean, ink: 'dot', radius: 4, shape: SHAPES[series.indexOf(curve)]!, tip },
      ]),
      ...(short === null ? [] : endLabels(factors[short]!, series, rows, span)),
    ],
    rightPixels: short === null ? 12 : 130,
  }
}

/** Where each curve is highest. */
function finding(result: GridNumbers, { long, short }: GridSides, shown: readonly GridPoint[], series: readonly number[]): string {
  const { factors } = result
  const height = (point: GridPoint): number => pointMean(point) ?? Number.NEGATIVE_INFINITY
  const told = series.length > NAMED_MAX ? [series[0]!, series.at(-1)!] : series
  const highest = told.flatMap((curve) => {
    const own = shown.filter(({ levels }) => short === null || levels[short] === curve)
    if (own.length === 0) return []
    const most = own.reduce((best, point) => (height(point) > height(best) ? point : best))
    const where = levelWords(factors[long]!, most.levels[long]!)
    return [`${short === null ? '' : `${levelWords(factors[short]!, curve)}: `}${unitsText(most)} at ${where}`]
  })
  return short === null ? `Most units: ${highest.join()}.` : `Most units with ${highest.join('; ')}.`
}

/** within a sentence */
const factorText = (factor: GridNumbers['factors'][number]): string =>
  factor.name === CARRIERS ? 'number of carriers' : axisWords(factor).title

/** Means only, the long factor down and the short one across: small enough for a terminal where the short factor has few levels. */
function crossTable(
  { factors, best, points }: GridNumbers,
  { long, short }: GridSides,
  {
    shown,
    fixed,
    random,
    per,
  }: { readonly shown: readonly GridPoint[]; readonly fixed: string; readonly random: boolean; readonly per: string },
): Table {
  const down = axisWords(factors[long]!)
  const across = short === null ? null : axisWords(factors[short]!)
  const at = (level: number, curve: number): GridPoint | undefined =>
    shown.find(({ levels }) => levels[long] === level && (short === null || levels[short] === curve))
  const bestLevels = best === null ? null : points[best]!.levels
  const curves = across === null ? [''] : across.levels
  const [own] = fieldNames([factors[long]!.name === CARRIERS ? CARRIERS : `set ${factors[long]!.name}`])
  const names = fieldNames(curves.map((_, curve) => (short === null ? 'units' : `units ${factors[short]!.levels[curve]}`)))
  return tableOf<string>({
    caption: `Mean units per ${per}${across === null ? '' : `, by ${factorText(factors[long]!)} and ${factorText(factors[short!]!)}`}${fixed === '' ? '' : `, with ${fixed}`}`,
    columns: [
      { head: down.title, text: (level) => level, data: [[own!, down.title, (_, index) => factors[long]!.levels[index]!]] },
      ...curves.map((level, curve): ColumnOf<string> => {
        const beside = short === null ? '' : ` with ${levelWords(factors[short]!, curve)}`
        const mean = (index: number) => at(index, curve)?.mean ?? null
        return {
          head: short === null ? `Units per\n${per}` : level,
          pageOnly: curve >= 7,
          text: (_, index) => {
            const point = at(index, curve)
            return point === undefined ? '–' : unitsText(point)
          },
          data: [
            [`${names[curve]}_mean`, `mean units per ${per}${beside}`, (_, index) => mean(index)?.mean ?? null],
            [`${names[curve]}_low`, `lower limit of the interval of the mean${beside}`, (_, index) => mean(index)?.low ?? null],
            [`${names[curve]}_high`, `upper limit of the interval of the mean${beside}`, (_, index) => mean(index)?.high ?? null],
          ],
        }
      }),
    ],
    rows: down.levels,
    marked: (_, index) => bestLevels !== null && bestLevels[long] === index,
    note: `${across === null ? '' : `Columns: ${across.title}. `}${random ? 'Means with 95 % intervals.' : 'Nothing random reaches these numbers.'}`,
  })
}
