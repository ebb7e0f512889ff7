/** Throughput against carriers: mean, its interval, spread of the windows, plan, and the three limits of the law. */
import type { SweepCount, SweepResult } from '@loopwright/study'
import type { ChartRow, Figure } from '../draw/figure.ts'
import { formatNumber, formatWithHalfWidth } from '../table/format.ts'
import { carriersText, frame, niceStep } from '../draw/frame.ts'
import { type LawBranch, lawBranches, lawLayers } from './lawLayers.ts'
import { throughputFinding } from './throughputFinding.ts'
import { bandLayers, meanLayers, type StillRun } from './throughputLayers.ts'
import { throughputTable } from './throughputTable.ts'

export interface ThroughputOptions {
  /** what one window is called, a noun whose plural ends in s: "shift". Default: "window" */
  readonly per?: string
}

/**
 * Points and steps of the mean output against the number of carriers, over the band in which eight of ten windows lie.
 *
 * @param sweep     at least one count
 * @throws RangeError   if there is no count
 */
export function throughput(sweep: SweepResult, { per = 'window' }: ThroughputOptions = {}): Figure {
  if (sweep.counts.length === 0) throw new RangeError('a sweep without counts cannot be drawn')
  const chosen = sweep.answer?.chosen ?? null
  const rows = sweep.counts.map((count) => rowOf(count, chosen, per))
  const branches = lawBranches(sweep)
  const span = verticalSpan(sweep, branches)
  const found = throughputFinding(sweep, per)
  const first = sweep.counts[0]!.carriers
  const last = sweep.counts.at(-1)!.carriers
  const alt = `Mean units per ${per} against the number of carriers, ${first} to ${last}, with the spread of single ${per}s${sweep.plan === null ? '' : `, the plan of ${formatNumber(sweep.plan, 0)}`}${sweep.law === null ? '' : ' and the limits of the law'}. ${found}`
  const still = stillRuns(sweep.counts, span)
  const marks = { first, last, span, chosen, plan: sweep.plan, per, counts: sweep.counts.length, still }
  return {
    spec: frame({
      description: alt,
      height: 340,
      rows,
      layer: [...bandLayers(marks), ...lawLayers(branches, span, sweep.law?.exact ?? false), ...meanLayers(marks)],
    }),
    rows,
    swapRows: false,
    finding: found,
    alt,
    readLine: readLine(sweep, per, span),
    table: throughputTable(sweep, per),
  }
}

function rowOf({ carriers, mean, p10, p90, units, gridlocks }: SweepCount, chosen: number | null, per: string): ChartRow {
  const centre = mean?.mean ?? units[0] ?? null
  const text = centre === null ? 'not simulated' : mean === null ? formatNumber(centre, 0) : formatWithHalfWidth(centre, mean.halfWidth)
  const spread = p10 === null || p90 === null ? '' : `; P10 ${formatNumber(p10.point, 0)}, P90 ${formatNumber(p90.point, 0)}`
  return {
    carriers,
    left: carriers - 0.5,
    right: carriers + 0.5,
    mean: centre,
    low: mean?.low ?? centre,
    high: mean?.high ?? centre,
    p10: p10?.point ?? null,
    p90: p90?.point ?? null,
    chosen: carriers === chosen,
    gridlocks,
    tip: `${carriersText(carriers)}: ${text} units per ${per}${spread}${gridlocks > 0 ? `; stood still in ${gridlocks}` : ''}`,
  }
}

/** Counts side by side at which the line stood still: the words stand above their marks, towards the middle of the chart, and inside it. */
function stillRuns(counts: readonly SweepCount[], [low, high]: readonly [number, number]): StillRun[] {
  const still = counts.map(({ gridlocks }) => gridlocks > 0)
  const middle = (counts[0]!.carriers + counts.at(-1)!.carriers) / 2
  return counts.flatMap((count, k) => {
    if (!still[k] || still[k - 1]) return []
    const end = still.indexOf(false, k)
    const run = counts.slice(k, end < 0 ? counts.length : end)
    const top = Math.max(...run.flatMap(({ units, mean, p90 }) => [mean?.high ?? units[0] ?? low, p90?.point ?? low]))
    const last = run.at(-1)!.carriers
    const right = (count.carriers + last) / 2 > middle
    return [
      {
        carriers: right ? last + 0.5 : count.carriers - 0.5,
        // below the upper edge, and above the words at the chosen count
        units: Math.max(low + (high - low) * 0.08, Math.min(top, high - (high - low) * 0.06)),
        align: right ? ('right' as const) : ('left' as const),
        text: `gridlock at ${count.carriers === last ? last : `${count.carriers}–${last}`}`,
      },
    ]
  })
}

/** From a round number below all marks, or 0 where they reach down to less than half, to a little above them. */
function verticalSpan({ counts, plan }: SweepResult, branches: readonly LawBranch[]): [number, number] {
  const marks = counts
    .flatMap(({ mean, p10, p90, units }) => [mean?.mean ?? units[0], p10?.point, p90?.point])
    .filter((each) => each !== undefined)
  const limits = branches.filter(({ branch }) => branch === 'station-limited').flatMap(({ points }) => points.map(({ units }) => units))
  const top = Math.max(1, ...marks, plan ?? 0, ...limits.filter((limit) => limit <= 1.5 * Math.max(1, ...marks)))
  const least = Math.min(top, ...marks, plan ?? top)
  const step = niceStep(top - Math.min(least, top / 2), 6)
  const low = least < top / 2 ? 0 : Math.max(0, Math.floor((least - 0.15 * (top - least)) / step) * step)
  return [low, top + (top - low) * 0.04]
}

function readLine({ counts, plan }: SweepResult, per: string, [low]: readonly [number, number]): string {
  const level = counts.find(({ mean }) => mean !== null)?.mean?.level
  return [
    `Dots: mean of the simulated ${per}s${level === undefined ? '' : `; the bar through a dot is as thick as the ${formatNumber(level * 100, 0)} % interval of that mean`}.`,
    `Band: eight of ten ${per}s, from P10 to P90.`,
    plan === null ? '' : 'Dashed: the plan.',
    low > 0 ? `The upright axis begins at ${formatNumber(low, 0)}.` : '',
  ]
    .filter((part) => part !== '')
    .join(' ')
}
