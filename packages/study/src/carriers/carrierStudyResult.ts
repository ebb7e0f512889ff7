/** What a carrier study tells beyond its runs. Plain data; the same numbers for any number of workers. */
import type { PairedDifference } from '@loopwright/stats/worlds'
import type { SweepAnswer, SweepResult } from '../sweep/sweepResult.ts'

/** The judged runs as a sweep of the counts tried, and how the answer came about. */
export interface CarrierStudy extends Omit<SweepResult, 'kind'> {
  readonly kind: 'carrier study'
  readonly pilot: Pilot
  /** in order; each has spent its own part of the chance of error */
  readonly looks: readonly Look[]
  /** the answer is confirmed, and one fewer shown to be too few (or gridlocked, or there is none); more runs would hardly change it */
  readonly settled: boolean
  /** the answer and the counts above it that each pass the same test; null without an answer */
  readonly flat: { readonly from: number; readonly to: number } | null
  /** what one carrier more brings, for each neighbouring two of the counts tried */
  readonly steps: readonly CarrierStep[]
}

/** The judged runs' counts that the pilot did not rule out have `replications` of the last look at least, the others fewer. */
export interface Pilot {
  readonly seed: string
  readonly replications: number
  readonly counts: readonly { readonly carriers: number; readonly mean: number; readonly gridlocks: number }[]
  /** the walk begins here; null: stopped before it was known */
  readonly reference: number | null
  /** counts so far below the reference that they are not tested; the chance that this is wrong is part of 1 − level */
  readonly ruledOut: readonly number[]
}

/** One look at the runs: how many there were, and what they said. */
export interface Look {
  /** per count, in all */
  readonly replications: number
  /** chance of error spent on it */
  readonly alpha: number
  readonly chosen: SweepAnswer['chosen']
  /** the count that is neither confirmed nor shown to fall short; null: none */
  readonly undecided: number | null
}

/** What one carrier more brings; units per window. */
export interface CarrierStep {
  readonly from: number
  readonly to: number
  /** units per window with `to` less those with `from`, in the same worlds, 95 % */
  readonly difference: PairedDifference
}
