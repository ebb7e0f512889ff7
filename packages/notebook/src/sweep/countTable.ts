import { formatNumber, formatShare, type Table } from '@loopwright/charts'
import type { SweepCount, SweepResult } from '@loopwright/study'
import { countWords, NOT_KNOWN } from './countWords.ts'
import type { Period } from './period.ts'

/** The sweep by count: what a terminal shows, and for the page what else is known. Heads may be broken into lines. */
export function countTable(result: SweepResult, period: Period): Table {
  const planned = period.plan !== null
  const still = result.counts.some((count) => count.gridlocks > 0)
  const columns: { head: string; words?: boolean; pageOnly?: boolean; text: (count: SweepCount) => string }[] = [
    { head: 'Carriers', text: (count) => String(count.carriers) },
    { head: `Units per ${period.one},\nmean ± 95 %`, text: (count) => countWords(count).meanWithHalfWidth },
    { head: 'P10', text: (count) => countWords(count).p10 ?? NOT_KNOWN },
    { head: 'P50', text: (count) => countWords(count).p50 ?? NOT_KNOWN },
    { head: 'P90', text: (count) => countWords(count).p90 ?? NOT_KNOWN },
    ...(planned ? [{ head: 'Plan\nmet in', text: planMet }] : []),
    ...(result.law === null ? [] : [{ head: 'Limited by\n(law)', words: true, text: regime }]),
    ...(still ? [{ head: 'Gridlock\nin runs', text: (count: SweepCount) => String(count.gridlocks) }] : []),
    ...(result.law === null
      ? []
      : [{ head: 'Law,\nunits', pageOnly: true, text: (count: SweepCount) => lawUnits(count, result.lawSeconds) }]),
    { head: `Single ${period.one},\n95 of 100`, pageOnly: true, text: singleShift },
    { head: 'Lap of a\ncarrier, min', pageOnly: true, text: (count) => minutes(count.lapSecondsMean) },
    { head: 'Time in\nline, min', pageOnly: true, text: (count) => minutes(count.timeInLineSecondsMean) },
    {
      head: 'Products\nin line',
      pageOnly: true,
      text: (count) => (count.productsInLineMean === null ? NOT_KNOWN : formatNumber(count.productsInLineMean, 1)),
    },
  ]
  const marked = result.answer?.chosen ?? null
  return {
    caption: `Output by number of carriers${period.plan === null ? '' : `; plan ${formatNumber(period.plan, 0)} units per ${period.one}`}`,
    columns: columns.map(({ head, words, pageOnly }) => ({ head, align: words === true ? 'left' : 'right', pageOnly: pageOnly === true })),
    rows: result.counts.map((count) => ({ cells: columns.map(({ text }) => text(count)), marked: count.carriers === marked })),
    note: `P10: nine of ten ${period.many} are better. P90: one of ten is better.`,
  }
}

const regime = ({ law }: SweepCount): string => law?.regime.replace('-limited', '') ?? NOT_KNOWN
const lawUnits = ({ law }: SweepCount, seconds: number): string => (law === null ? NOT_KNOWN : formatNumber(law.rate * seconds, 0))

function planMet(count: SweepCount): string {
  return count.meetsPlan === null ? NOT_KNOWN : formatShare(count.meetsPlan.share)
}

function singleShift(count: SweepCount): string {
  const { low, high } = countWords(count)
  return low === null || high === null ? NOT_KNOWN : `${low} to ${high}`
}

function minutes(seconds: number | null): string {
  return seconds === null ? NOT_KNOWN : formatNumber(seconds / 60, 1)
}
