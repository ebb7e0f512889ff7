/** What drives the output: ranked bars of the gain per cent, with their intervals. */
import type { DriverResult } from '@loopwright/study'
import type { Mark } from '../drawing/drawing.ts'
import { rowAxis, rowWords, STEP_PIXELS } from '../drawing/rows.ts'
import type { Figure } from '../draw/figure.ts'
import { decimalsFor, formatNumber, formatShare } from '../table/format.ts'
import { niceStep } from '../draw/window.ts'
import { namesText } from '../table/namesText.ts'
import { type ColumnOf, type Table, tableOf, wordColumn } from '../table/table.ts'

/** How the chart of drivers is told. */
export interface DriversOptions {
  /** what one window is called. Default: "window" */
  readonly per?: string
}

type Effect = DriverResult['drivers'][number]

/** more bars would not be read; the table has all */
const BARS_MAX = 14
/** drivers that a sentence names */
const NAMED_MAX = 4

/**
 * Horizontal bars, the largest gain first; what counts most of all that is shown to count is dark, the rest pale.
 *
 * @example drivers({ drivers: [], limits: [], step: 0.05 }).finding // => 'Nothing was found to drive the output.'
 */
export function drivers(result: Pick<DriverResult, 'drivers' | 'limits' | 'step'>, options: DriversOptions = {}): Figure {
  const { per = 'window' } = options
  const shown = result.drivers.slice(0, BARS_MAX)
  const found = finding(result, per)
  const alt = `Bars of the gain in output per one per cent of each of ${shown.length} drivers, with intervals. ${found}`
  return {
    drawing: drawingOf(shown, result.limits),
    finding: found,
    alt,
    readLine: `Per cent more output for one per cent less time (of the time between stops, and of a share: more), other things equal, over the same simulated ${per}s. Thin bars: 95 % intervals. Strong: what counts most of all that is shown to count.`,
    table: driverTable(result, per),
  }
}

function drawingOf(shown: readonly Effect[], limits: readonly number[]): Figure['drawing'] {
  const highest = Math.max(0.1, ...shown.map(({ elasticity }) => elasticity.high))
  const lowest = Math.min(0, ...shown.map(({ elasticity }) => elasticity.low))
  const step = niceStep(highest - lowest, 5)
  return {
    heightPixels: STEP_PIXELS * Math.max(1, shown.length),
    across: {
      from: Math.floor(lowest / step + 1e-9) * step,
      to: Math.ceil(highest / step - 1e-9) * step,
      title: 'More output for 1 % less time (%)',
      grid: true,
    },
    up: rowAxis(shown.length),
    marks: [
      ...shown.flatMap((effect, row): Mark[] => {
        const { mean, low, high, halfWidth, level } = effect.elasticity
        const text = gainText(effect)
        const between = `${formatNumber(low, 2)} to ${formatNumber(high, 2)}`
        const tip = `${effect.name}: ${text} (${formatShare(level)}: ${between})`
        return [
          ...rowWords(row, effect.name, halfWidth === 0 ? text : `${text} (${between})`, limits.includes(row)),
          { mark: 'area', x: [0, mean], y: [row + 0.5, row + 0.9], ink: limits.includes(row) ? 'bar' : 'barPale', tip },
          ...(halfWidth === 0 ? [] : [{ mark: 'rule', x: [low, high], y: [row + 0.7, row + 0.7], ink: 'whisker', ends: 3 } satisfies Mark]),
        ]
      }),
      { mark: 'rule', x: [0, 0], y: ['from', 'to'], ink: 'zero' },
    ],
  }
}

/**
 * "0.86 %": more output for 1 % less of it, rounded by its interval; the one text of this number on a page.
 *
 * @example gainText({ elasticity: { mean: 0.71, halfWidth: 0.02 } }) // => '0.71 %'
 */
export function gainText({ elasticity: { mean, halfWidth } }: Pick<Effect, 'elasticity'>): string {
  return `${formatNumber(mean, Math.max(1, Math.min(2, decimalsFor(halfWidth, 2))))} %`
}

function finding({ drivers: all, limits }: Pick<DriverResult, 'drivers' | 'limits'>, per: string): string {
  if (all.length === 0) return 'Nothing was found to drive the output.'
  if (all.every(({ elasticity: { low, high } }) => low === 0 && high === 0))
    return `None of the ${all.length === 1 ? 'times' : `${all.length} drivers`} changes anything in the output by itself.`
  const [first, ...alike] = limits.map((index) => all[index]!)
  if (first === undefined) {
    const narrow = all.some(({ elasticity: { halfWidth } }) => halfWidth > 0) ? `; more simulated ${per}s narrow them` : ''
    return `Nothing is shown to bring more output: no interval lies above 0${narrow}.`
  }
  const [less, gain] = [first.lessIsBetter ? 'less' : 'more', gainText(first)]
  const names = namesText(
    [first, ...alike].map(({ name }) => name),
    NAMED_MAX,
  )
  const others =
    alike.length === 0
      ? ''
      : `; ${alike.length === 1 ? alike[0]!.name : `${alike.length} others`} ${alike.length === 1 ? 'is' : 'are'} shown to count, too`
  if (all[0] !== first)
    return `1 % ${less} of ${first.name} is shown to give ${gain} more output${others}. What counts most is not shown yet; more simulated ${per}s tell.`
  if (alike.length > 0)
    return `What counts most cannot be told apart yet (${names}): 1 % ${less} of ${first.name} gives ${gain} more output.`
  const next = all.find((effect) => effect !== first && effect.elasticity.low > 0)
  return next === undefined
    ? `Nothing but ${first.name} is shown to count: 1 % ${less} of it gives ${gain} more output.`
    : `Most is brought by ${first.name}: ${gain} more output for 1 % ${less}; next is ${next.name}, with ${gainText(next)}.`
}

function driverTable({ drivers: all, limits, step }: Pick<DriverResult, 'drivers' | 'limits' | 'step'>, per: string): Table {
  const percent = formatNumber(step * 100, 0)
  const interval: ColumnOf<Effect> = {
    head: '95 %\ninterval',
    text: ({ elasticity: { low, high } }) => `${formatNumber(low, 2)} to ${formatNumber(high, 2)}`,
    data: [
      ['elasticity_low', 'lower limit of the 95 % interval', ({ elasticity }) => elasticity.low],
      ['elasticity_high', 'upper limit of the 95 % interval', ({ elasticity }) => elasticity.high],
    ],
  }
  return tableOf<Effect>({
    caption: `What drives the output, the largest first`,
    columns: [
      wordColumn('Driver', 'driver', 'what was changed', ({ name }) => name),
      {
        head: '1 % better\ngives, %',
        bar: ({ elasticity }) => Math.max(0, elasticity.mean),
        text: (effect) => gainText(effect).replace(' %', ''),
        data: [['elasticity', '% more output for 1 % better', ({ elasticity }) => elasticity.mean]],
      },
      ...(all.every(({ elasticity: { halfWidth } }) => halfWidth === 0) ? [] : [interval]),
      {
        head: `${percent} % better:\nunits a ${per}`,
        text: ({ unitsOfStep }) => formatNumber(unitsOfStep, 1),
        data: [['units_of_step', `units per ${per} more for ${percent} % better`, ({ unitsOfStep }) => unitsOfStep]],
      },
    ],
    rows: all,
    marked: (_, index) => limits.includes(index),
    note: 'Better: less of a time, more of a time between stops. Of a share of products: more of it, whether that is better or not.',
  })
}
