/** The carrier curve of a page, drawn anew beside itself where a reader changes the line. */
import { type Figure as ChartFigure, throughput } from '@loopwright/charts'
import type { LineSpec } from '@loopwright/line'
import type { Changes, Scenario } from '@loopwright/scenario'
import type { SweepCount, SweepResult } from '@loopwright/study'
import { withCarriers } from '@loopwright/study/change'
import { chartFigure } from '../cells/chartCell.ts'
import type { Figure } from '../cells/figure.ts'
import { toldCount } from '../words/controlWords.ts'
import type { LiveCurve } from './liveInput.ts'

/** numbers of replications of each count after which the curve is drawn */
export const CURVE_STAGES = [5, 20, 80]

/** @param drawn  the curve as the page shows it */
export function liveCurve(
  counts: readonly SweepCount[],
  { drawing: { up } }: ChartFigure,
  { per, choice, named }: Pick<LiveCurve, 'per' | 'choice' | 'named'>,
): LiveCurve {
  const means = counts.map(({ carriers, mean, units, gridlocks }) => ({
    carriers,
    units: gridlocks > 0 ? null : (mean?.mean ?? units[0] ?? null),
  }))
  return { per, choice, named, ghost: { called: 'in the file', counts: means, span: [up.from, up.to] } }
}

/** Nothing but the number of carriers is changed: the curve stays what it is. */
export const isOnlyCount = (changes: Changes): boolean => Object.keys(changes).every((path) => path === 'carriers.count')

/** The counts of a curve that a changed line can take. */
export function takenCounts({ ghost: { counts } }: LiveCurve, line: LineSpec): number[] {
  return counts.flatMap(({ carriers }) => {
    try {
      withCarriers(line, carriers)
      return [carriers]
    } catch {
      return []
    }
  })
}

/** The curve of a setting beside that of the file. */
export function curveFigure({ per, choice, ghost }: LiveCurve, { line }: Scenario, swept: SweepResult): Figure {
  const counts = swept.counts.map((count) => toldCount(count))
  const named = counts.some(({ carriers }) => carriers === line.carriers.count) ? line.carriers.count : null
  return { ...chartFigure(throughput({ ...swept, counts }, { per, choice, named, ghost })), tableOpen: true }
}
