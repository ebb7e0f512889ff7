/** How often a plan is met: one set of words for every study, on one rule for its thresholds. */
import { formatNumber, formatShare, percent } from '@loopwright/charts/table'
import type { ChanceVerdict } from '@loopwright/stats'
import type { Period } from '../sweep/period.ts'

/** Fewer simulated windows than these promise nothing. */
export const FEW = 20

/**
 * "The plan of 320 is met in about nine of ten shifts (89 %, 87 to 91)."
 *
 * @param plan  units wanted
 */
export function planSentence(plan: number, verdict: ChanceVerdict, { many }: Pick<Period, 'many'>): string {
  return `The plan of ${planText(plan)} is ${planPhrase(verdict, many)}.`
}

/** Units wanted, with a decimal only where there is one. */
export const planText = (plan: number): string => formatNumber(plan, Number.isInteger(plan) ? 0 : 1)

/** "met in about nine of ten shifts (89 %, 87 to 91)" */
export function planPhrase(verdict: ChanceVerdict, many: string): string {
  const { successes, n, low, high, method } = verdict
  if (method === 'no chance') return successes === 0 ? `never met: all ${many} are the same` : `always met: all ${many} are the same`
  const simulated = `${formatNumber(n, 0)} ${many} simulated`
  if (successes === 0 && (verdict.verdict === 'not met' || n >= FEW))
    return `met in none of ${simulated}${n < FEW ? '' : ` (the chance is at most ${formatShare(high)})`}`
  if (n < FEW) return `met in ${successes === n ? 'all' : `${formatNumber(successes, 0)} of`} ${simulated}: too few to promise anything`
  switch (verdict.verdict) {
    case 'met':
      return successes === n
        ? `met in all ${simulated} (the chance is at least ${formatShare(low)})`
        : `met in more than nine of ten ${many} (${chanceWords(verdict)})`
    case 'not met':
      return `met in fewer than nine of ten ${many} (${chanceWords(verdict)})`
    case 'about':
      return `met in about nine of ten ${many} (${chanceWords(verdict)})`
    case 'open':
      return successes === n
        ? `met in all ${simulated}; the chance is at least ${formatShare(low)}, and whether it is nine of ten takes more ${many} to say`
        : `met in ${formatNumber(successes, 0)} of ${simulated}; the chance is between ${formatShare(low)} and ${formatShare(high)}, and whether it is nine of ten takes more ${many} to say`
  }
}

/** "89 %, 87 to 91"; of all or none the one limit that there is. */
export function chanceWords({ share, low, high, method }: Pick<ChanceVerdict, 'share' | 'low' | 'high' | 'method'>): string {
  if (method === 'no chance') return share === 1 ? 'always' : 'never'
  if (share === 1) return `the chance is at least ${formatShare(low)}`
  if (share === 0) return `the chance is at most ${formatShare(high)}`
  return `${formatShare(share)}, ${percent(low)} to ${percent(high)}`
}

/** What a terminal may show by colour. */
export function planTone(verdict: ChanceVerdict | null | undefined): 'good' | 'bad' | undefined {
  if (verdict?.verdict === 'met') return 'good'
  return verdict?.verdict === 'not met' ? 'bad' : undefined
}

/** A tone as the field of a cell; none where there is none. */
export const toned = (tone: 'good' | 'bad' | undefined): { readonly tone?: 'good' | 'bad' } => (tone === undefined ? {} : { tone })
