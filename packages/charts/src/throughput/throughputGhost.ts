/** The curve of a line as it was, behind the one that it has become. */
import type { SweepCount } from '@loopwright/study'
import type { Mark } from '../drawing/drawing.ts'
import { carriersText } from '../draw/window.ts'
import { formatNumber, formatWithHalfWidth } from '../table/format.ts'

/** What is kept of a curve, so that another can be drawn beside it. */
export interface ThroughputGhost {
  /** how sentences name it, behind a mean: "in the file" */
  readonly called: string
  /** ascending by carriers; mean units of a window, null: some runs stood still, or there was none */
  readonly counts: readonly { readonly carriers: number; readonly units: number | null }[]
  /** ends of its upright axis */
  readonly span: readonly [from: number, to: number]
}

/** half of the width of a stroke, in counts */
const STROKE_HALF = 0.34

/** A level stroke at each mean. */
export function ghostMarks({ counts }: ThroughputGhost): Mark[] {
  return counts.flatMap(({ carriers, units }): Mark[] =>
    units === null ? [] : [{ mark: 'rule', x: [carriers - STROKE_HALF, carriers + STROKE_HALF], y: [units, units], ink: 'ghost' }],
  )
}

/** The caption beside another curve: which count makes the most on each. */
export function besideGhost(counts: readonly SweepCount[], { called, counts: before }: ThroughputGhost, per: string): string {
  const moving = counts.flatMap(({ carriers, mean, units, gridlocks }) => {
    const made = mean?.mean ?? units[0]
    return gridlocks > 0 || made === undefined ? [] : [{ carriers, units: made, text: formatWithHalfWidth(made, mean?.halfWidth ?? 0) }]
  })
  const now = mostOf(moving)
  const was = mostOf(before.flatMap(({ carriers, units }) => (units === null ? [] : [{ carriers, units }])))
  if (now === null) return 'With the change the line came to a standstill with every count tried.'
  const made = `With the change ${carriersText(now.carriers)} ${now.carriers === 1 ? 'makes' : 'make'} the most of those tried, ${now.text} units per ${per}`
  if (was === null) return `${made}.`
  return `${made}; ${called} ${formatNumber(was.units, 0)}${was.carriers === now.carriers ? '' : `, with ${was.carriers}`}.`
}

function mostOf<Count extends { readonly units: number }>(counts: readonly Count[]): Count | null {
  return counts.reduce<Count | null>((most, each) => (most === null || each.units > most.units ? each : most), null)
}
