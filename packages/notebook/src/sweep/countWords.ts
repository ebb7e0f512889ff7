import { formatNumber, roundedParts } from '@loopwright/charts/table'
import type { SweepCount } from '@loopwright/study'

/** The numbers of one count as texts: each has one rounding, wherever it stands on a page. */
export interface CountWords {
  readonly mean: string
  /** of the 95 % interval */
  readonly halfWidth: string
  /** nine of ten are better; null below 2 replications */
  readonly p10: string | null
  readonly p50: string | null
  /** one further shift, 95 of 100 */
  readonly low: string | null
  readonly high: string | null
}

export const NOT_KNOWN = '–'

/** Units per window of one count; a dash where there are fewer than 2 replications. */
export function countWords(count: Pick<SweepCount, 'mean' | 'p10' | 'p50' | 'singleShift'>): CountWords {
  const whole = (value: number | undefined): string | null => (value === undefined ? null : formatNumber(value, 0))
  const parts = count.mean === null ? null : roundedParts(count.mean.mean, count.mean.halfWidth)
  return {
    mean: parts?.value ?? NOT_KNOWN,
    halfWidth: parts?.half ?? NOT_KNOWN,
    p10: whole(count.p10?.point),
    p50: whole(count.p50?.point),
    low: whole(count.singleShift === null ? undefined : Math.max(0, count.singleShift.low)),
    high: whole(count.singleShift?.high),
  }
}
