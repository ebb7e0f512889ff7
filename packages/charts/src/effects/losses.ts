/** What is lost by what cause: floating bars from the ideal down to the forecast. */
import type { LossResult } from '@loopwright/study'
import type { Ink } from '../drawing/ink.ts'
import type { Mark } from '../drawing/drawing.ts'
import { rowAxis, STEP_PIXELS } from '../drawing/rows.ts'
import type { Figure } from '../draw/figure.ts'
import { differenceDecimals, formatDifference, formatNumber, formatShare, formatWithHalfWidth } from '../table/format.ts'
import { niceStep } from '../draw/window.ts'
import { type Table, tableOf, wordColumn } from '../table/table.ts'

/** How the chart of losses is told. */
export interface LossesOptions {
  /** what one window is called. Default: "window" */
  readonly per?: string
}

type LossFigures = Pick<LossResult, 'forecast' | 'ideal' | 'gap' | 'causes'>
type Loss = LossResult['causes'][number]
type Total = NonNullable<LossResult['forecast']>
type Kind = 'total' | 'loss' | 'gain'

const INKS: Readonly<Record<Kind, Ink>> = { total: 'barPale', loss: 'bar', gain: 'move' }

/** A bar of the waterfall. */
interface Step {
  readonly cause: string
  readonly kind: Kind
  /** units where it begins: 0 of a total, else the level before it */
  readonly from: number
  /** units where it ends */
  readonly to: number
  /** ends of the interval of where it ends */
  readonly low: number
  readonly high: number
  readonly text: string
  readonly tip: string
}

/**
 * A full bar for the ideal, a floating bar for each cause, a full bar for the forecast; both ends of every floating bar are lines that were
 * simulated, so the causes stand in the order of the study read from the ideal: the last taken out comes first.
 *
 * @example losses({ forecast: null, ideal: null, gap: null, causes: [] }).finding // => 'Nothing can be told of losses yet.'
 */
export function losses(result: Pick<LossResult, 'forecast' | 'ideal' | 'gap' | 'causes'>, options: LossesOptions = {}): Figure {
  const { per = 'window' } = options
  const rows = rowsOf(result, per)
  const found = finding(result, per)
  const alt = `Bars of the units a ${per}, from the ideal down to the forecast by ${result.causes.length} causes, with intervals. ${found}`
  return {
    drawing: drawingOf(rows, per),
    finding: found,
    alt,
    readLine: `From the top: units a ${per} without any of the causes, then what each cause takes, down to the line as it stands, all over the same simulated ${per}s. Each cause is counted with those above it there and those below it gone. Thin bars: 95 % intervals. Faint: totals, cut off at the left${axisFrom(rows) > 0 ? `, where the axis begins at ${formatNumber(axisFrom(rows), 0)}` : ''}.`,
    table: lossTable(result, rows, per),
  }
}

function rowsOf({ forecast, ideal, causes }: LossFigures, per: string): Step[] {
  if (forecast === null || ideal === null) return []
  let level = ideal.mean
  const floating = [...causes].reverse().map(({ name, step }): Step => {
    const from = level
    level -= step.mean
    const text = lostText(step)
    const interval = `${formatShare(step.level)}: ${formatNumber(-step.high, 1)} to ${formatNumber(-step.low, 1)}`
    const kind: Kind = step.mean < 0 ? 'gain' : 'loss'
    return {
      cause: name,
      kind,
      from,
      to: level,
      low: from - step.high,
      high: from - step.low,
      text,
      tip: `${name}: ${text} units a ${per} (${interval})`,
    }
  })
  return [total('Ideal: none of these', ideal, per), ...floating, total('Forecast: as it stands', forecast, per)]
}

function total(cause: string, { mean, halfWidth, low, high }: Total, per: string): Step {
  const text = formatWithHalfWidth(mean, halfWidth)
  return { cause, kind: 'total', from: 0, to: mean, low, high, text, tip: `${cause}: ${text} units a ${per}` }
}

function drawingOf(steps: readonly Step[], per: string): Figure['drawing'] {
  const from = axisFrom(steps)
  const highest = Math.max(from + 1, ...steps.flatMap((each) => [each.from, each.to, each.high]))
  const step = niceStep(highest - from, 5)
  const to = Math.ceil(highest / step - 1e-9) * step
  return {
    heightPixels: STEP_PIXELS * Math.max(1, steps.length),
    across: { from, to, title: `Units a ${per}`, grid: true, cut: from > 0 },
    up: rowAxis(steps.length),
    marks: [
      ...steps.slice(1).map(
        (_, index): Mark => ({
          mark: 'rule',
          x: [steps[index]!.to, steps[index]!.to],
          y: [index + 0.92, index + 1.48],
          ink: 'thin',
          dash: [2, 2],
        }),
      ),
      ...steps.flatMap((each, row) => stepMarks(each, row, [from, to])),
    ],
    rightPixels: 14,
  }
}

/** A round number below all levels, so that the steps can be seen, also where nothing is lost; 0 where they reach down to less than half. */
function axisFrom(steps: readonly Step[]): number {
  const levels = steps.flatMap(({ to, low }) => [to, low])
  const [least, most] = [Math.min(...levels), Math.max(...levels, 1)]
  if (steps.length === 0 || least < most / 2) return Math.min(0, least)
  const span = most - least || most
  const step = niceStep(span, 5)
  return Math.max(0, Math.floor((least - span * 0.35) / step) * step)
}

/** A bar, its interval, its name above it and its number at the end that has more room. */
function stepMarks({ cause, kind, from, to, low, high, text, tip }: Step, row: number, [start, end]: readonly [number, number]): Mark[] {
  const y = [row + 0.48, row + 0.92] as const
  const [left, right] = [Math.min(from, to, low), Math.max(from, to, high)]
  const atLeft = kind !== 'total' && left - start > end - right
  const inside = kind === 'total' && right > (start + end) / 2
  return [
    { mark: 'words', x: 'from', y: row + 0.26, text: cause, ink: kind === 'total' ? 'strong' : 'words', beside: '' },
    { mark: 'area', x: kind === 'total' ? ['from', to] : [from, to], y, ink: INKS[kind], tip },
    { mark: 'rule', x: [low, high], y: [row + 0.7, row + 0.7], ink: 'whisker', ends: 3 },
    {
      mark: 'words',
      x: atLeft || inside ? Math.min(to, low) : right,
      y: row + 0.7,
      dx: atLeft || inside ? -7 : 7,
      align: atLeft || inside ? 'end' : 'start',
      text,
      ink: 'words',
      ...(inside ? {} : { rim: 'paper' }),
      tip,
    },
  ]
}

/** What is lost of a gain by taking out: "−40 ± 3", or where the cause helps, "+2 ± 1"; one decimal at most */
function lostText({ mean, halfWidth }: Pick<Loss['step'], 'mean' | 'halfWidth'>): string {
  const text = formatDifference({ mean: -mean, halfWidth })
  return mean < 0 && /[1-9]/.test(formatNumber(mean, differenceDecimals(mean, halfWidth))) ? `+${text}` : text
}

function finding({ forecast, ideal, gap, causes }: LossFigures, per: string): string {
  if (forecast === null || ideal === null || gap === null) return 'Nothing can be told of losses yet.'
  const shown = causes.filter(({ step }) => step.mean > 0 && step.status !== 'no difference shown')
  const [first, ...others] = shown.toSorted((a, b) => b.step.mean - a.step.mean)
  if (first === undefined) return 'No cause is shown to cost units.'
  const alike = others.filter(({ step }) => step.high >= first.step.low)
  if (alike.length > 0) return `The largest losses cannot be told apart: ${[first, ...alike].map(sized).join(', ')} units a ${per}.`
  const next = others.slice(0, 2).map(sized).join(' and ')
  return `The largest loss is by ${first.name}: ${sizeText(first.step)} ${sizeText(first.step) === '1' ? 'unit' : 'units'} a ${per}${next === '' ? '' : `; next by ${next}`}.`
}

const sized = ({ name, step }: Loss): string => `${name} (${sizeText(step)})`
const sizeText = ({ mean, halfWidth }: Loss['step']): string => formatNumber(Math.abs(mean), differenceDecimals(mean, halfWidth))

interface Row {
  readonly cause: string
  /** as drawn */
  readonly text: string
  /** units left after it */
  readonly leaves: number
  /** null: a total */
  readonly loss: Loss | null
  readonly total: Total | null
}

function lossTable({ forecast, ideal, gap, causes }: LossFigures, rows: readonly Step[], per: string): Table {
  const random = causes.some(({ step, alone }) => step.halfWidth > 0 || alone.halfWidth > 0)
  const totals = [ideal, ...causes.map(() => null), forecast]
  const losses = [null, ...causes.toReversed(), null]
  type Limit = 'mean' | 'low' | 'high'
  const units = ({ loss, total }: Row, ofTotal: Limit, ofCause: Limit): number | null =>
    loss === null ? (total?.[ofTotal] ?? null) : -loss.step[ofCause]
  return tableOf<Row>({
    caption: `Units a ${per}, from the ideal to the forecast`,
    columns: [
      wordColumn('Cause', 'cause', 'what takes units; the first and last rows are totals', ({ cause }) => cause),
      {
        head: `Units a\n${per}`,
        bar: ({ loss }) => (loss === null ? null : Math.abs(loss.step.mean)),
        text: ({ text }) => text,
        data: [
          ['units', `units per ${per}: of a total made, of a cause what it takes, below 0`, (row) => units(row, 'mean', 'mean')],
          ['units_low', 'lower limit of the 95 % interval', (row) => units(row, 'low', 'high')],
          ['units_high', 'upper limit of the 95 % interval', (row) => units(row, 'high', 'low')],
        ],
      },
      {
        head: 'Leaves',
        text: ({ loss, leaves }) => (loss === null ? '' : formatNumber(leaves, 0)),
        data: [['leaves', `units per ${per} left after it`, ({ leaves }) => leaves]],
      },
      {
        head: 'Gained if it\nalone were gone',
        text: ({ loss }) => (loss === null ? '' : formatDifference(loss.alone)),
        data: [
          ['alone', `units per ${per} more if this cause alone were gone; empty for totals`, ({ loss }) => loss?.alone.mean ?? null],
          ['alone_low', 'lower limit of the 95 % interval', ({ loss }) => loss?.alone.low ?? null],
          ['alone_high', 'upper limit of the 95 % interval', ({ loss }) => loss?.alone.high ?? null],
        ],
      },
    ],
    rows: rows.map(({ cause, text, to }, index) => ({
      cause,
      text,
      leaves: to,
      loss: losses[index] ?? null,
      total: totals[index] ?? null,
    })),
    marked: ({ loss }) => loss === null,
    note:
      gap === null
        ? null
        : `Minus: units that the cause takes, counted with those above it there and those below it gone; another order would share out otherwise what causes cost together.${random ? ' Intervals: 95 %.' : ''}`,
  })
}
