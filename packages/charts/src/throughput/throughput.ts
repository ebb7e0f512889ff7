/** Throughput against carriers: mean, its interval, spread of the windows, plan, and the three limits of the law. */
import type { SweepCount, SweepResult } from '@loopwright/study'
import type { KeyEntry } from '../drawing/drawing.ts'
import type { Figure } from '../draw/figure.ts'
import { formatNumber } from '../table/format.ts'
import { axisBegin, axisStep } from '../draw/axisBegin.ts'
import { type LawBranch, lawBranches, lawKey, lawLines } from './lawMarks.ts'
import { besideGhost, ghostMarks, type ThroughputGhost } from './throughputGhost.ts'
import { throughputFinding } from './throughputFinding.ts'
import { chosenMarks, meanMarks, planMarks, spreadMarks, touchMarks } from './throughputMarks.ts'
import { throughputTable } from './throughputTable.ts'

/** How the chart of output against carriers is told. */
export interface ThroughputOptions {
  /** what one window is called, a noun whose plural ends in s: "shift". Default: "window" */
  readonly per?: string
  /** the choice of the page that a click on a count makes. Default: none */
  readonly choice?: string
  /** the count that the answer names first; null: none. Default: the one that is enough for nearly the best output */
  readonly named?: number | null
  /** the curve of the line as it was, beside which this one is told. Default: none */
  readonly ghost?: ThroughputGhost
}

/**
 * A dot for each number of carriers, with the interval of the mean, over the bar in which eight of ten windows lie.
 *
 * @param sweep     at least one count
 * @throws RangeError   if there is no count
 * @example throughput(await sweepCarriers(line, { counts: [2, 3], replications: 5 }, { seed: '1', workers: 0 })).finding // => '3 carriers make the most, and no more were tried.'
 */
export function throughput(
  sweep: SweepResult,
  { per = 'window', choice, named = sweep.answer?.chosen ?? null, ghost }: ThroughputOptions = {},
): Figure {
  const { counts, plan, law } = sweep
  if (counts.length === 0) throw new RangeError('a sweep without counts cannot be drawn')
  const branches = lawBranches(sweep)
  const [low, high] = verticalSpan(sweep, branches, ghost)
  const found = ghost === undefined ? throughputFinding(sweep, per) : besideGhost(counts, ghost, per)
  const first = counts[0]!.carriers
  const last = counts.at(-1)!.carriers
  return {
    drawing: {
      heightPixels: 300,
      across: {
        from: first - 0.6,
        to: last + 0.6,
        title: 'Number of carriers',
        ticks: counts.map(({ carriers }) => ({ at: carriers, text: String(carriers) })),
      },
      up: { from: low, to: high, title: `Units per ${per}`, grid: true, cut: low > 0 },
      key: [
        ...keyOf(sweep, branches, per),
        ...(ghost === undefined ? [] : [{ text: ghost.called, sample: 'line', ink: 'ghost' } as const]),
      ],
      marks: [
        ...spreadMarks(counts),
        ...(ghost === undefined ? [] : ghostMarks(ghost)),
        ...lawLines(branches),
        ...(plan === null ? [] : planMarks(plan)),
        ...chosenMarks(
          counts.find(({ carriers }) => carriers === named),
          first,
          last,
        ),
        ...meanMarks(counts, named),
        ...touchMarks(counts, per),
      ],
      rightPixels: plan === null ? 8 : 44,
      ...(choice === undefined ? {} : { choice }),
    },
    finding: found,
    alt: `Mean units per ${per} against the number of carriers, ${first} to ${last}, with the spread of single ${per}s${plan === null ? '' : `, the plan of ${formatNumber(plan, 0)}`}${law === null ? '' : ' and the limits of the law'}. ${found}`,
    readLine: readLine(sweep, per, low, ghost),
    table: throughputTable(sweep, per, named, ghost),
  }
}

function keyOf({ counts, law }: SweepResult, branches: readonly LawBranch[], per: string): KeyEntry[] {
  const spread = counts.some(({ p10, p90 }) => p10 !== null && p90 !== null && p10.point < p90.point)
  const still = counts.filter(({ gridlocks }) => gridlocks > 0)
  return [
    { text: 'mean', sample: 'dot', ink: 'dot' },
    ...(spread ? [{ text: `eight of ten ${per}s`, sample: 'area', ink: 'band' } as const] : []),
    ...(still.some(({ moving }) => moving !== null) ? [{ text: 'runs that keep moving', sample: 'dot', ink: 'openDot' } as const] : []),
    ...(still.length > 0 ? [{ text: 'runs that stood still', sample: 'dot', ink: 'dot', shape: 'cross' } as const] : []),
    ...lawKey(branches, law?.exact ?? false),
  ]
}

/** From a round number below all marks, or 0 where they reach down to less than half, to a little above them; beside another curve on its axis, which grows by whole steps where it must. */
function verticalSpan({ counts, plan }: SweepResult, branches: readonly LawBranch[], ghost?: ThroughputGhost): [number, number] {
  const marks = counts.flatMap(ends)
  const limits = branches.filter(({ branch }) => branch === 'station-limited').flatMap(({ points }) => points.map(({ units }) => units))
  const top = Math.max(1, ...marks, plan ?? 0, ...limits.filter((limit) => limit <= 1.5 * Math.max(1, ...marks)))
  const least = Math.min(top, ...marks, plan ?? top)
  const low = axisBegin(least, top, 0.15)
  const high = top + (top - low) * 0.04
  if (ghost === undefined) return [low, high]
  const [from, to] = ghost.span
  const step = axisStep(least, top)
  return [Math.min(from, low), high <= to ? to : Math.ceil(high / step) * step]
}

function ends({ mean, p10, p90, units, gridlocks }: SweepCount): number[] {
  if (gridlocks > 0) return [0, Math.max(...units)]
  return [mean?.mean ?? units[0], mean?.low, mean?.high, p10?.point, p90?.point].filter((each) => each !== undefined)
}

function readLine({ counts, plan }: SweepResult, per: string, low: number, ghost?: ThroughputGhost): string {
  const level = counts.find(({ mean }) => mean !== null)?.mean?.level
  return [
    `Dots: mean of the simulated ${per}s${level === undefined ? '' : `; the thin bar through a dot is the ${formatNumber(level * 100, 0)} % interval of that mean, too short to be seen where many ${per}s were simulated`}.`,
    `Wide bars: eight of ten ${per}s, from P10 to P90.`,
    plan === null ? '' : 'Dashed: the plan.',
    counts.some(({ gridlocks }) => gridlocks > 0)
      ? 'Where some runs stood still for good, those and the others have a mark of their own.'
      : '',
    ghost === undefined ? '' : `Level strokes: the mean ${ghost.called}.`,
    low > 0 ? `The upright axis begins at ${formatNumber(low, 0)}.` : '',
  ]
    .filter((part) => part !== '')
    .join(' ')
}
