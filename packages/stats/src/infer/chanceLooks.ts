import { notAShare } from '../messages.ts'
import { CHANCE_LEVEL, type ChanceVerdict, chanceVerdict } from './chanceVerdict.ts'

/** Numbers of windows at which a chance is looked at, and the part of the chance of error that each look spends; the parts sum to 1. */
export const CHANCE_LOOKS: readonly { readonly n: number; readonly part: number }[] = [
  { n: 20, part: 0.02 },
  { n: 50, part: 0.03 },
  { n: 100, part: 0.1 },
  { n: 300, part: 0.15 },
  { n: 1050, part: 0.3 },
  { n: 2000, part: 0.4 },
]

/**
 * The number of windows of the next look; null: there was the last.
 *
 * @example nextLook(40) // => 50
 */
export function nextLook(n: number): number | null {
  return CHANCE_LOOKS.find((look) => look.n > n)?.n ?? null
}

/**
 * The verdict on a chance that is looked at while its windows come in. Only the numbers of windows fixed above are looked at, and the side of the border is called
 * shown at the level that remains of `alpha` for that look. So a wrong side is named at any of the looks with a chance of at most `alpha` (Bonferroni's inequality
 * over the looks), however the decision to go on was made.
 *
 * @param outcomes  by window, in order; what lies beyond the last look that is complete is left out
 * @param alpha     chance of error over all looks, above 0 and below 1
 * @returns         null before the first look
 * @throws StatisticsError E_DOMAIN
 * @see Jennison & Turnbull, Group Sequential Methods with Applications to Clinical Trials (2000), from memory: error spending, repeated confidence intervals
 * @example chanceLooks(new Array(120).fill(true), 0.05)?.n // => 100
 */
export function chanceLooks(outcomes: readonly boolean[], alpha: number): ChanceVerdict | null {
  if (!(alpha > 0 && alpha < 1)) throw notAShare('The chance of error', alpha)
  const look = CHANCE_LOOKS.findLast((each) => each.n <= outcomes.length)
  if (look === undefined) return null
  const seen = outcomes.slice(0, look.n)
  const shownLevel = Math.max(CHANCE_LEVEL, 1 - alpha * look.part)
  return chanceVerdict(seen.filter(Boolean).length, look.n, { shownLevel, last: look === CHANCE_LOOKS.at(-1) })
}
