/** The marks of the throughput chart: spread, interval and mean of each count, the plan and the chosen count. */
import type { SweepCount } from '@loopwright/study'
import type { Mark } from '../drawing/drawing.ts'
import { formatNumber, formatWithHalfWidth } from '../table/format.ts'
import { carriersText } from '../draw/window.ts'

/** half of the width of a spread, in counts */
const SPREAD_HALF = 0.2

/** What lies behind the lines of the law: where eight of ten windows lie. */
export function spreadMarks(counts: readonly SweepCount[]): Mark[] {
  return counts.flatMap((count): Mark[] => {
    const [low, high] =
      count.gridlocks > 0 ? [count.moving?.low ?? null, count.moving?.high ?? null] : [count.p10?.point ?? null, count.p90?.point ?? null]
    if (low === null || high === null) return []
    const x = [count.carriers - SPREAD_HALF, count.carriers + SPREAD_HALF] as const
    const edge = (at: number): Mark => ({ mark: 'rule', x, y: [at, at], ink: 'bandEdge' })
    return [{ mark: 'area', x, y: [low, high], ink: 'band' }, edge(low), edge(high)]
  })
}

/** What lies before them: the mean with its interval. A count of which some runs stood still has two marks, one for each kind of runs: their mean would be neither. */
export function meanMarks(counts: readonly SweepCount[], chosen: number | null): Mark[] {
  return counts.flatMap((count): Mark[] => {
    if (count.gridlocks > 0) return stillMarks(count)
    const centre = count.mean?.mean ?? count.units[0] ?? null
    if (centre === null) return []
    const x = count.carriers
    const own = x === chosen
    const whisker: Mark[] =
      count.mean === null || count.mean.halfWidth === 0
        ? []
        : [{ mark: 'rule', x: [x, x], y: [count.mean.low, count.mean.high], ink: 'whisker' }]
    return [...whisker, { mark: 'dot', x, y: centre, ink: own ? 'chosenDot' : 'dot', radius: own ? 6 : 3.5 }]
  })
}

function stillMarks({ carriers: x, moving, units, gridlocks, replications }: SweepCount): Mark[] {
  const total = units.reduce((sum, made) => sum + made, 0)
  const moved =
    moving?.mean?.mean ?? (moving === null || moving.low === null || moving.high === null ? null : (moving.low + moving.high) / 2)
  const stood = (total - (moved ?? 0) * (replications - gridlocks)) / gridlocks
  return [
    ...(moved === null ? [] : [{ mark: 'dot', x, y: moved, ink: 'openDot', radius: 4 } satisfies Mark]),
    { mark: 'dot', x, y: Math.max(0, stood), ink: 'dot', shape: 'cross', radius: 4 },
  ]
}

/** A line across the area, its number to the right of it. */
export function planMarks(plan: number): Mark[] {
  return [
    { mark: 'rule', x: ['from', 'to'], y: [plan, plan], ink: 'plan' },
    { mark: 'words', x: 'to', y: plan, dx: 6, text: ['plan', formatNumber(plan, 0)], ink: 'planWords' },
  ]
}

/** A line down to the number of carriers, and what it is. */
export function chosenMarks(count: SweepCount | undefined, first: number, last: number): Mark[] {
  const centre = count?.mean?.mean ?? count?.units[0] ?? null
  if (count === undefined || centre === null || count.gridlocks > 0) return []
  const x = count.carriers
  const left = x - first <= last - x
  return [
    { mark: 'rule', x: [x, x], y: ['from', centre], ink: 'chosenLine' },
    {
      mark: 'words',
      x,
      y: 'from',
      dx: left ? 6 : -6,
      dy: -12,
      text: carriersText(x),
      ink: 'chosenWords',
      align: left ? 'start' : 'end',
      rim: 'paper',
    },
  ]
}

/** An unseen column for each count: pointed at, it says its numbers; clicked, it chooses the count. */
export function touchMarks(counts: readonly SweepCount[], per: string): Mark[] {
  return counts.map((count) => ({
    mark: 'area',
    x: [count.carriers - 0.5, count.carriers + 0.5],
    y: ['from', 'to'],
    ink: 'hit',
    tip: tipOf(count, per),
    pick: String(count.carriers),
  }))
}

export function tipOf({ carriers, mean, p10, p90, units, gridlocks }: SweepCount, per: string): string {
  const centre = mean?.mean ?? units[0] ?? null
  if (centre === null) return `${carriersText(carriers)}: not simulated`
  const text = mean === null ? formatNumber(centre, 0) : formatWithHalfWidth(centre, mean.halfWidth)
  if (gridlocks > 0) return `${carriersText(carriers)}: stood still for good in ${gridlocks} of ${units.length}`
  const spread = p10 === null || p90 === null ? '' : `; P10 ${formatNumber(p10.point, 0)}, P90 ${formatNumber(p90.point, 0)}`
  return `${carriersText(carriers)}: ${text} units per ${per}${spread}`
}
