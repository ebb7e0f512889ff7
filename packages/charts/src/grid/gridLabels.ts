/** Words beside the curves of a grid: names at their ends that never lie on each other, and the number of the plan where it is in nobody's way. */
import type { ChartRow } from '../draw/figure.ts'
import { formatNumber } from '../table/format.ts'
import type { Layer } from '../draw/frame.ts'
import { CARRIERS, type GridNumbers, levelWords } from './gridParts.ts'

/** pixels */
export const HEIGHT = 320
/** pixels from one label to the next */
const LABEL_PIXELS = 17
/** share of the width that the word at the plan may take */
const LABEL_SHARE = 0.4
/** of the curves, in the order of their levels */
export const DASHES: readonly (readonly number[])[] = [
  [1, 0],
  [6, 3],
  [2, 3],
  [9, 3, 2, 3],
  [12, 4],
  [4, 2, 1, 2],
  [1, 3],
  [9, 2],
]
export const SHAPES = ['circle', 'square', 'triangle-up', 'diamond', 'triangle-down', 'cross', 'triangle-right', 'triangle-left']

/** With its number where the fewest marks are: at the left or the right end, above the line or below. */
export function planLayers(plan: number, rows: readonly ChartRow[], [low, high]: readonly [number, number]): Layer[] {
  const y = { datum: plan, type: 'quantitative' } as const
  const pixels = (units: number): number => ((units - plan) / (high - low)) * HEIGHT
  const ats = rows.map(({ at }) => Number(at))
  const [first, last] = [Math.min(...ats), Math.max(...ats)]
  const places = (['left', 'right'] as const).flatMap((align) =>
    ([1, -1] as const).map((side) => {
      const near = rows.filter(({ at }) => (align === 'left' ? Number(at) - first : last - Number(at)) <= (last - first) * LABEL_SHARE)
      const room = pixels(side > 0 ? high : low) * side
      return { align, side, clear: Math.min(room, ...near.map(({ mean }) => Math.abs(pixels(Number(mean)) - side * LABEL_PIXELS * 0.7))) }
    }),
  )
  const { align, side } = places.reduce((best, each) => (each.clear > best.clear ? each : best))
  return [
    { data: { values: [{}] }, mark: { type: 'rule', style: 'plan' }, encoding: { y } },
    {
      data: { values: [{}] },
      mark: {
        type: 'text',
        style: 'planText',
        align,
        baseline: side > 0 ? 'bottom' : 'top',
        x: align === 'left' ? 4 : { expr: 'width - 4' },
        dy: -4 * side,
        text: `plan ${formatNumber(plan, 0)}`,
      },
      encoding: { y },
    },
  ]
}

/** The mark and name of each curve beside its end; names that would lie on each other move apart, in the order of the ends. */
export function endLabels(
  factor: GridNumbers['factors'][number],
  curves: readonly string[],
  rows: readonly ChartRow[],
  [low, high]: readonly [number, number],
): Layer[] {
  const ends = curves
    .flatMap((curve) => {
      const own = rows.filter((each) => each.curve === curve)
      const last = own.reduce<ChartRow | null>((far, each) => (far === null || Number(each.at) > Number(far.at) ? each : far), null)
      return last === null ? [] : [{ curve, y: HEIGHT * (1 - (Number(last.mean) - low) / (high - low)) }]
    })
    .sort((a, b) => a.y - b.y)
  const places = spread(
    ends.map(({ y }) => y),
    LABEL_PIXELS,
    HEIGHT,
  )
  return ends.flatMap(({ curve }, index): Layer[] => {
    const y = Math.round(places[index]! * 10) / 10
    const place = curves.indexOf(curve)
    const text = factor.name === CARRIERS ? levelWords(factor, Number(curve)) : factor.levels[Number(curve)]!
    const mark = (each: object): Layer => ({ data: { values: [{}] }, mark: { y, ...each } as never, encoding: {} })
    return [
      mark({ type: 'point', style: 'meanDot', x: { expr: 'width + 12' }, shape: SHAPES[place]! }),
      mark({ type: 'text', style: 'words', align: 'left', baseline: 'middle', x: { expr: 'width + 22' }, text, limit: 120 }),
    ]
  })
}

/**
 * Places at least `apart` from each other, near where they were wanted.
 *
 * @param wanted  ascending
 * @example spread([10, 12, 50], 10, 100) // => [6, 16, 50]
 */
export function spread(wanted: readonly number[], apart: number, most: number): number[] {
  const groups: { sum: number; count: number; from: number }[] = []
  const start = (sum: number, count: number): number =>
    Math.max(0, Math.min(most - (count - 1) * apart, sum / count - ((count - 1) * apart) / 2))
  for (const place of wanted) {
    let group = { sum: place, count: 1, from: start(place, 1) }
    for (let last = groups.at(-1); last !== undefined && last.from + last.count * apart > group.from; last = groups.at(-1)) {
      groups.pop()
      group = { sum: last.sum + group.sum, count: last.count + group.count, from: start(last.sum + group.sum, last.count + group.count) }
    }
    groups.push(group)
  }
  return groups.flatMap(({ from, count }) => Array.from({ length: count }, (_, index) => from + index * apart))
}
