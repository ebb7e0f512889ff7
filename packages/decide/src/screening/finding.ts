/** One comparison of an input with published guidance: what was found, against what, and what would have to be measured. Never a verdict on a hazard. */

/** Where a guidance value comes from. */
export type Evidence =
  | 'stated in the source'
  | 'second-hand quote, check the edition'
  | 'from memory'
  | 'common practice, no source'
  | 'by mechanics'
  | 'your own copy'

/** A published value, and on which side of it a figure should lie. */
export interface Guidance {
  /** SI: newtons, metres, metres per second, seconds, kilograms, volts, or a count */
  readonly value: number
  /** the other end, where the guidance is a range; null: one value */
  readonly upTo: number | null
  readonly side: 'at most' | 'at least' | 'between'
  readonly source: string
  readonly edition: string
  readonly evidence: Evidence
}

/** The only words there are. `above`: on the wrong side of the guidance value; of a least distance, short of it. */
export const GUIDANCE_WORDS = ['above guidance value', 'within guidance value', 'not checked'] as const
/** One of GUIDANCE_WORDS. */
export type GuidanceWord = (typeof GUIDANCE_WORDS)[number]

/** Units of figures, as they are kept. */
export type ScreeningUnit = 'N' | 'm' | 'm/s' | 's' | 'kg' | 'V' | 'W' | 'A' | 'm/s²' | 'count'

/** What was looked at, and what came out. */
export interface ScreeningFinding {
  /** unique within a screening */
  readonly id: string
  readonly topic: string
  /** what the figure is of, and where */
  readonly what: string
  /** null: not known */
  readonly value: number | null
  readonly unit: ScreeningUnit
  /** null: there is none, or none is printed */
  readonly guidance: Guidance | null
  /** share of the guidance value that is left, negative beyond it; null where nothing was compared */
  readonly margin: number | null
  readonly word: GuidanceWord
  readonly assumptions: readonly string[]
  /** why nothing was compared; null where it was */
  readonly why: string | null
  /** what to measure on the machine, or to read in one's own copy of the standard */
  readonly measure: string
}

/** Which kinds of values are compared with at all: those that nobody has checked against the printed source are off unless asked for. */
export interface Permitted {
  readonly secondHand: boolean
  readonly fromMemory: boolean
}

/** What a finding is made of. */
export type FindingParts = Omit<ScreeningFinding, 'margin' | 'word' | 'why'> & {
  /** why nothing may be compared, whatever the figures; default: nothing stands against it */
  readonly why?: string | null
}

const OFF: Partial<Record<Evidence, keyof Permitted>> = {
  'second-hand quote, check the edition': 'secondHand',
  'from memory': 'fromMemory',
}

/**
 * Compares a figure with its guidance value, where that is permitted.
 *
 * @example compareWith({ id: 'push', topic: 'Push force', what: 'to start', value: 160, unit: 'N', guidance: { value: 150, upTo: null, side: 'at most', source: 'a table', edition: 'of 2016', evidence: 'stated in the source' }, assumptions: [], measure: 'a force gauge' }, { secondHand: false, fromMemory: false }).word // => 'above guidance value'
 */
export function compareWith(parts: FindingParts, permitted: Permitted): ScreeningFinding {
  const { value, guidance } = parts
  const why = parts.why ?? whyNot(value, guidance, permitted)
  if (why !== null) return { ...parts, margin: null, word: 'not checked', why }
  const margin = marginOf(value!, guidance!)
  return { ...parts, margin, word: margin < 0 ? 'above guidance value' : 'within guidance value', why: null }
}

function whyNot(value: number | null, guidance: Guidance | null, permitted: Permitted): string | null {
  if (value === null) return 'the figure is not known'
  if (guidance === null) return 'there is no value to compare with'
  const needs = OFF[guidance.evidence]
  if (needs === undefined || permitted[needs]) return null
  return guidance.evidence === 'from memory'
    ? 'the value is from memory: compare it with the printed source, then turn it on'
    : 'the value is a second-hand quote: check the edition, then turn it on'
}

/** Of a range the nearer end counts. */
function marginOf(value: number, { value: first, upTo, side }: Guidance): number {
  const below = 1 - value / (side === 'between' ? upTo! : first)
  const above = value / first - 1
  return side === 'at most' ? below : side === 'at least' ? above : Math.min(below, above)
}
