/** Which numbers of carriers meet the plan in nine of ten windows. */
import type { ChanceVerdict, ChanceWord } from '@loopwright/stats'

/** One rule for all studies: `chanceVerdict`. */
export interface PlanAnswer {
  /** smallest count shown to meet it; null: none is. A count that stood still in any run is none */
  readonly carriers: number | null
  /** smallest count below that (of all, where none meets it) whose chance is about nine of ten; null: none */
  readonly about: number | null
  /** counts below `carriers` (all, where none meets it) of which too few windows were run to say */
  readonly open: readonly number[]
  /** the count whose chance is highest by its lower limit, of equals the smallest; null: no window of any count met the plan */
  readonly best: number | null
  /** the smallest count that is not shown to miss it, and its neighbours tried, are told on one side or as about nine of ten */
  readonly settled: boolean
  /** by carriers, ascending; those with a verdict */
  readonly counts: readonly PlanVerdict[]
}

/** A verdict, and whether the count can be chosen. */
export interface PlanVerdict extends ChanceVerdict {
  readonly carriers: number
  /** runs that ended in gridlock; such a count is never chosen */
  readonly stoodStill: number
}

/** What the answer needs of a count. */
export interface PlanCount {
  readonly carriers: number
  /** null: no verdict yet */
  readonly planVerdict: ChanceVerdict | null
  /** runs that ended in gridlock */
  readonly gridlocks: number
}

/**
 * The plan's answer from the verdict on each count.
 *
 * @param counts  ascending by carriers
 * @returns       null where no count has a verdict
 * @example planAnswer((await sweepCarriers(line, { counts: [2, 3], replications: 60, plan: 60 }, { seed: '1', workers: 0 })).counts).carriers // => 2
 */
export function planAnswer(counts: readonly PlanCount[]): PlanAnswer | null {
  const told = counts.flatMap(({ carriers, planVerdict, gridlocks }) =>
    planVerdict === null ? [] : [{ carriers, stoodStill: gridlocks, ...planVerdict }],
  )
  if (told.length === 0) return null
  const moving = told.filter(({ stoodStill }) => stoodStill === 0)
  const carriers = moving.find(({ verdict }) => verdict === 'met')?.carriers ?? null
  const below = moving.filter((count) => carriers === null || count.carriers < carriers)
  const best = moving.toSorted((a, b) => b.low - a.low || b.share - a.share || a.carriers - b.carriers)[0]
  return {
    carriers,
    about: below.find(({ verdict }) => verdict === 'about')?.carriers ?? null,
    open: below.filter(({ verdict }) => verdict === 'open').map((count) => count.carriers),
    best: best === undefined || best.successes === 0 ? null : best.carriers,
    settled: questioned(moving).every(({ verdict }) => verdict !== 'open'),
    counts: told,
  }
}

/**
 * The counts that decide: the smallest that is not shown to miss the plan, and its neighbours; none where all miss it.
 *
 * @param counts  ascending by carriers, none that stood still
 */
export function questioned<Count extends { readonly verdict: ChanceWord }>(counts: readonly Count[]): readonly Count[] {
  const first = counts.findIndex(({ verdict }) => verdict !== 'not met')
  return first < 0 ? [] : counts.slice(Math.max(0, first - 1), first + 2)
}
