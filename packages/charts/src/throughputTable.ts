/** The numbers of the throughput chart. */
import type { SweepCount, SweepResult } from '@loopwright/study'
import { formatNumber, formatWithHalfWidth, percent } from './format.ts'
import { column, row, type Table } from './table.ts'

const NONE = '–'

/**
 * One row for each count; the chosen one is marked.
 */
export function throughputTable({ counts, plan, law, lawSeconds, answer }: SweepResult, per: string): Table {
  const level = counts.find(({ mean }) => mean !== null)?.mean?.level ?? 0.95
  const still = counts.some(({ gridlocks }) => gridlocks > 0)
  const units = (value: number | null | undefined) => (value === null || value === undefined ? NONE : formatNumber(value, 0))
  return {
    caption: `Units per ${per} by number of carriers`,
    columns: [
      column('Carriers', 'right'),
      column(`Mean ± ${formatNumber(level * 100, 0)} % (units)`, 'right'),
      column('P10 (units)', 'right'),
      column('P50 (units)', 'right'),
      column('P90 (units)', 'right'),
      ...(plan === null ? [] : [column(`Meets ${formatNumber(plan, 0)} (%)`, 'right')]),
      ...(law === null ? [] : [column(`Law, ${law.exact ? 'exact' : 'estimate'} (units)`, 'right'), column('Limited by', 'left')]),
      ...(still ? [column('Stood still', 'right', true)] : []),
    ],
    rows: counts.map((count) =>
      row(
        [
          String(count.carriers),
          meanText(count),
          units(count.p10?.point),
          units(count.p50?.point),
          units(count.p90?.point),
          ...(plan === null ? [] : [count.meetsPlan === null ? NONE : percent(count.meetsPlan.share)]),
          ...(count.law === null ? [] : [units(count.law.rate * lawSeconds), count.law.regime.replace('-limited', '')]),
          ...(still ? [String(count.gridlocks)] : []),
        ],
        count.carriers === answer?.chosen,
      ),
    ),
    note: `P10: nine of ten ${per}s are better. P90: one of ten is better.${law === null ? '' : ' The law knows no breakdowns and no spread of times.'}`,
  }
}

function meanText({ mean, units }: SweepCount): string {
  if (mean === null) return units.length === 0 ? NONE : formatNumber(units[0]!, 0)
  return formatWithHalfWidth(mean.mean, mean.halfWidth)
}
