import { notAShare } from '../messages.ts'
import { needLevel } from '../samples.ts'
import { binomialEstimate } from './binomialEstimate.ts'

/**
 * On which side of a border a chance lies. met, not met: the whole interval is at or above the border, or below it; about: the interval holds the border, and the
 * chance is known closely enough to be told so; open: too few windows to say.
 */
export type ChanceWord = 'met' | 'not met' | 'about' | 'open'

/** fixed n: the number of windows was chosen before; looks: the windows were looked at again and again, and the chance of error of all looks together is kept; no chance: nothing random reaches the output */
export type ChanceMethod = 'fixed n' | 'looks' | 'no chance'

/** A chance and the side of a border on which it lies. */
export interface ChanceVerdict {
  readonly verdict: ChanceWord
  /** 0 … 1 */
  readonly border: number
  readonly successes: number
  readonly n: number
  /** successes/n */
  readonly share: number
  /** the interval that the verdict rests on, Clopper–Pearson */
  readonly low: number
  readonly high: number
  /** of that interval */
  readonly level: number
  readonly method: ChanceMethod
}

/** What a verdict on a chance rests on. */
export interface ChanceRule {
  /** default 0.9: nine of ten windows */
  readonly border?: number
  /** confidence of what is told without a claim of side, above 0 and below 1; default 0.95 */
  readonly level?: number
  /** half-width at which the chance counts as known, share; default 0.02 */
  readonly within?: number
  /** confidence that a side needs, at least `level`; default `level`. Greater where many looks or counts share one chance of error */
  readonly shownLevel?: number
  /** no more windows will come: a chance known closely is told, even where the interval at `level` is wholly on one side; default false */
  readonly last?: boolean
}

/** Share of windows that shall meet the plan: nine of ten. */
export const PLAN_SHARE = 0.9
export const CHANCE_LEVEL = 0.95
const CHANCE_WITHIN = 0.02

/**
 * Tells on which side of a border a chance lies, from windows simulated: the one rule for all studies.
 *
 * @param successes  windows in which it was so, whole number, 0 … n
 * @param n          independent windows, from 1
 * @throws StatisticsError E_TOO_FEW, E_DOMAIN
 * @see Clopper & Pearson, The use of confidence or fiducial limits illustrated in the case of the binomial (1934)
 * @example chanceVerdict(99, 100).verdict // => 'met'
 * @example chanceVerdict(18, 20).verdict // => 'open'
 */
export function chanceVerdict(successes: number, n: number, rule: ChanceRule = {}): ChanceVerdict {
  const { border = PLAN_SHARE, level = CHANCE_LEVEL, within = CHANCE_WITHIN, shownLevel = level, last = false } = rule
  if (!(border > 0 && border < 1)) throw notAShare('The border', border)
  needLevel(shownLevel)
  const plain = binomialEstimate(successes, n, level)
  const shown = shownLevel === level ? plain : binomialEstimate(successes, n, shownLevel)
  const told = (verdict: ChanceWord, { share, low, high, level: of }: typeof plain): ChanceVerdict => ({
    verdict,
    border,
    successes,
    n,
    share,
    low,
    high,
    level: of,
    method: shownLevel === level ? 'fixed n' : 'looks',
  })
  if (shown.low >= border) return told('met', shown)
  if (shown.high < border) return told('not met', shown)
  const holds = plain.low < border && plain.high >= border
  const known = (plain.high - plain.low) / 2 <= within && (holds || last)
  return told(known ? 'about' : 'open', holds ? plain : shown)
}

/**
 * The verdict on a line without chance, from one window.
 *
 * @example certainVerdict(true).verdict // => 'met'
 */
export function certainVerdict(met: boolean, border: number = PLAN_SHARE): ChanceVerdict {
  const share = met ? 1 : 0
  return {
    verdict: met ? 'met' : 'not met',
    border,
    successes: share,
    n: 1,
    share,
    low: share,
    high: share,
    level: CHANCE_LEVEL,
    method: 'no chance',
  }
}
