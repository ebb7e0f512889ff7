/** Words beside the curves of a grid: names at their ends that never lie on each other, and the number of the plan where it is in nobody's way. */
import type { Mark, Shape } from '../drawing/drawing.ts'
import { formatNumber } from '../table/format.ts'
import { shortened } from '../drawing/textWidth.ts'
import { TEXT_SIZE } from '../draw/theme.ts'
import { CARRIERS, type GridNumbers, levelWords } from './gridParts.ts'

/** pixels */
export const HEIGHT = 320
/** pixels from one label to the next */
const LABEL_PIXELS = 17
/** pixels that the name of a curve may take */
const NAME_PIXELS = 104
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
export const SHAPES: readonly Shape[] = ['circle', 'square', 'up', 'diamond', 'down', 'cross', 'right', 'left']

/** One setting on a curve. */
export interface CurvePoint {
  /** place along the level axis */
  readonly at: number
  /** which level of the other factor, as its index */
  readonly curve: number
  readonly mean: number
  readonly low: number
  readonly high: number
  readonly best: boolean
  readonly tip: string
}

/** With its number where the fewest marks are: at the left or the right end, above the line or below. */
export function planMarks(plan: number, rows: readonly CurvePoint[], [low, high]: readonly [number, number]): Mark[] {
  const pixels = (units: number): number => ((units - plan) / (high - low)) * HEIGHT
  const ats = rows.map(({ at }) => at)
  const [first, last] = [Math.min(...ats), Math.max(...ats)]
  const places = (['start', 'end'] as const).flatMap((align) =>
    ([1, -1] as const).map((side) => {
      const near = rows.filter(({ at }) => (align === 'start' ? at - first : last - at) <= (last - first) * LABEL_SHARE)
      const room = pixels(side > 0 ? high : low) * side
      return { align, side, clear: Math.min(room, ...near.map(({ mean }) => Math.abs(pixels(mean) - side * LABEL_PIXELS * 0.7))) }
    }),
  )
  const { align, side } = places.reduce((best, each) => (each.clear > best.clear ? each : best))
  return [
    { mark: 'rule', x: ['from', 'to'], y: [plan, plan], ink: 'plan' },
    {
      mark: 'words',
      x: align === 'start' ? 'from' : 'to',
      y: plan,
      dx: align === 'start' ? 4 : -4,
      dy: -4 * side,
      text: `plan ${formatNumber(plan, 0)}`,
      ink: 'planWords',
      align,
      edge: side > 0 ? 'bottom' : 'top',
    },
  ]
}

/** The mark and name of each curve beside its end; names that would lie on each other move apart, in the order of the ends. */
export function endLabels(
  factor: GridNumbers['factors'][number],
  curves: readonly number[],
  rows: readonly CurvePoint[],
  [low, high]: readonly [number, number],
): Mark[] {
  const ends = curves
    .flatMap((curve) => {
      const own = rows.filter((each) => each.curve === curve)
      const last = own.reduce<CurvePoint | null>((far, each) => (far === null || each.at > far.at ? each : far), null)
      return last === null ? [] : [{ curve, y: HEIGHT * (1 - (last.mean - low) / (high - low)) }]
    })
    .sort((a, b) => a.y - b.y)
  const places = spread(
    ends.map(({ y }) => y),
    LABEL_PIXELS,
    HEIGHT,
  )
  return ends.flatMap(({ curve }, index): Mark[] => {
    const dy = Math.round(places[index]! * 10) / 10
    const text = factor.name === CARRIERS ? levelWords(factor, curve) : factor.levels[curve]!
    return [
      { mark: 'dot', x: 'to', y: 'to', dx: 12, dy, ink: 'dot', shape: SHAPES[curves.indexOf(curve)]! },
      { mark: 'words', x: 'to', y: 'to', dx: 22, dy, text: shortened(text, NAME_PIXELS, TEXT_SIZE), ink: 'words', tip: text },
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
