/** What a carrier sweep tells. Plain data; the same numbers for any number of workers. Times in seconds, counts per window (a shift where there is a calendar). */
import type { ByCarrierState, ByStationState, ByZoneState } from '@loopwright/line'
import type { Law, LawTerms } from '@loopwright/line/bounds'
import type { BinomialEstimate, ChanceVerdict, OutputInterval, QuantileEstimate, WindowInterval } from '@loopwright/stats'
import type { ShownMean } from '@loopwright/stats/worlds'
import type { PlanAnswer } from './planAnswer.ts'

/** What a sweep tells: each number of carriers, and the answer. */
export interface SweepResult {
  readonly kind: 'carrier sweep'
  readonly engineVersion: string
  readonly seed: string
  /** asked for, per count, 1 where nothing is left to chance; how many each count has is told with it */
  readonly replications: number
  /** false: nothing in the line is left to chance, every run is the same, and one was run of each count */
  readonly chance: boolean
  /** stopped before all replications were done; every count then holds replications 0 … n − 1 of its own n */
  readonly partial: boolean
  /** units wanted per window; null without a plan */
  readonly plan: number | null
  readonly window: { readonly warmupSeconds: number; readonly endSeconds: number }
  /** what the law is made of, and its knees (MODEL.md §12); null: the line is no single closed loop, and has none */
  readonly law: Law | null
  /** units per window = rate of the law (carriers per second) × this: products per lap (1 without a law) × seconds of the window that are no break */
  readonly lawSeconds: number
  /** by carriers, ascending */
  readonly counts: readonly SweepCount[]
  /** null while a count has fewer than 2 replications */
  readonly answer: SweepAnswer | null
  /** which counts meet the plan in nine of ten windows; null without a plan or a replication */
  readonly planAnswer: PlanAnswer | null
}

/** What the runs with one number of carriers tell; seconds, units per window, shares 0 … 1. */
export interface SweepCount {
  readonly carriers: number
  /** n: replications 0 … n − 1 are in */
  readonly replications: number
  /** output per window, by replication */
  readonly units: readonly number[]
  /** null where n < 2, but for lines without chance */
  readonly mean: OutputInterval | null
  /** the same mean with the luck of its worlds taken out (control variates), and what that is worth; null where a gain is not shown */
  readonly controlled: ShownMean | null
  readonly p10: QuantileEstimate | null
  readonly p50: QuantileEstimate | null
  readonly p90: QuantileEstimate | null
  /** share of windows with output ≥ plan; null without a plan or below 1 replication */
  readonly meetsPlan: BinomialEstimate | null
  /** whether nine of ten windows meet the plan, and how surely; null as `meetsPlan`, and in a carrier study below 20 replications */
  readonly planVerdict: ChanceVerdict | null
  /** one further shift, 95 of 100; null where n < 2 */
  readonly singleShift: WindowInterval | null
  /** runs that ended in gridlock, and out of products */
  readonly gridlocks: number
  /** the runs that did not end in gridlock, by themselves; null where all did not */
  readonly moving: MovingRuns | null
  readonly outOfProducts: number
  /** the law's three terms for this count (MODEL.md §12), carriers per second; null as in the result */
  readonly law: LawTerms | null
  /** means over replications; this and the lists below are empty, the rest null, while there is no replication */
  readonly stations: readonly StationShares[]
  readonly zones: readonly ZoneShares[]
  /** share of the carriers' time in each state, 0 … 1; null while there is no replication */
  readonly carrierShares: ByCarrierState | null
  /** mean units in each hour of the window */
  readonly outputByHour: readonly number[]
  /** between which units eight of ten windows lie in each hour; empty below 10 replications */
  readonly hourSpread: readonly { readonly p10: number; readonly p90: number }[]
  /** mean seconds down per window and mean stops per window, by cause (breakdown sources, then `break`) */
  readonly stoppedBy: readonly { readonly cause: string; readonly seconds: number; readonly count: number }[]
  readonly lapSecondsMean: number | null
  readonly timeInLineSecondsMean: number | null
  readonly productsInLineMean: number | null
}

/** Output of the runs that did not stand still. */
export interface MovingRuns {
  readonly replications: number
  /** null below 2 of them */
  readonly mean: OutputInterval | null
  /** least and most units of one of them; null where there is none */
  readonly low: number | null
  readonly high: number | null
}

/** Mean shares of the window that a station spends in each state, 0 … 1. */
export interface StationShares {
  readonly name: string
  readonly title: string
  /** share of the window in each state, 0 … 1 */
  readonly shares: ByStationState
  readonly longestBlockSecondsMean: number
  /** mean seconds per window, by cause */
  readonly stoppedBy: readonly { readonly cause: string; readonly seconds: number }[]
}

/** Mean shares of the window that a zone spends in each state, 0 … 1. */
export interface ZoneShares {
  readonly name: string
  readonly occupancyMean: number
  /** share of the window in each state, 0 … 1 */
  readonly shares: ByZoneState
}

/**
 * The answer of Procedure W: the smallest count whose mean is within `within` of that of every other count tried, with confidence `level`.
 * Where the walk begins is decided by pilot runs in other random worlds.
 */
export interface SweepAnswer {
  readonly within: number
  readonly level: number
  /** highest mean in the pilot among counts that never stood still; the walk goes down from here */
  readonly reference: number
  /** highest mean in these runs; ties to the smaller count */
  readonly best: number
  /** null: no count could be confirmed */
  readonly chosen: number | null
  /** the count where the walk ended; null where it came to the smallest tried */
  readonly notConfirmed: NotConfirmed | null
  /** the best count is the largest tried */
  readonly bestAtUpperEnd: boolean
  /** the chosen count is the smallest tried */
  readonly chosenAtLowerEnd: boolean
  /** replications compared: those that every count has */
  readonly replications: number
}

/** Why the walk from the reference downwards ended. */
export interface NotConfirmed {
  readonly carriers: number
  /** `gridlock`: it stood still in some replication, and is not recommended whatever it made */
  readonly reason: 'may fall short' | 'gridlock'
  /** units per window by which the lower limit lies below the border, 0 where it does not */
  readonly shortBy: number
  /** least of the one-sided lower limits of the mean of Y_N − (1 − within)·Y_m over the other counts m, units per window */
  readonly lowerLimit: number
  /** the count m that gives it */
  readonly against: number
  /** it does fall short: the upper limit against the reference lies below the border too */
  readonly shown: boolean
}
