/** The check while a trial runs: at each look a count below which the trial may end early, so that all looks together raise no more false alarms than asked for. */

/** Counts at each look: rows are trials, columns looks. */
export type TrialPaths = readonly (readonly number[])[]

/** What to do at each look. */
export interface SequentialPlan {
  /** share of the trial at each look, ascending, the last is 1 */
  readonly shares: readonly number[]
  /** stop as failed below this count; null: at this look no count stops it */
  readonly stopBelow: readonly (number | null)[]
  /** share of trials of a line that meets its forecast which are stopped at some look: in the trials that the counts were made from */
  readonly falseAlarmFitted: number
  /** the same in trials that were kept apart; the honest figure */
  readonly falseAlarm: number
  /** share of the slower line’s trials that no look stops */
  readonly miss: number
  /** share of the slower line’s trials that are stopped at this look or before */
  readonly stoppedBy: readonly number[]
}

/**
 * Counts for each look. What may be spent of the false alarms by a look grows with the share of the trial: at half of the trial half of them.
 *
 * @param healthy     simulated trials of a line that meets its forecast: the first half makes the counts, the second tells how often they are wrong
 * @param slower      simulated trials of a slower line
 * @param shares      of the trial at each look, ascending, the last is 1
 * @param falseAlarm  for all looks together, above 0 and below 1
 * @throws RangeError  below 40 trials of each, or if a trial has not one count for each look
 * @see Hahn & Meeker, Statistical Intervals (1991): the chance of a further observation below the k-th of n is k/(n + 1)
 * @see Lan & DeMets (1983), error spending linear in time (from memory); here with simulated trials in place of a normal walk
 * @example sequentialPlan(Array.from({ length: 80 }, (_, i) => [50 + (i % 40)]), Array.from({ length: 80 }, () => [40]), [1], 0.1).stopBelow // => [53]
 */
export function sequentialPlan(healthy: TrialPaths, slower: TrialPaths, shares: readonly number[], falseAlarm: number): SequentialPlan {
  for (const paths of [healthy, slower]) {
    if (paths.length < TRIALS_LEAST)
      throw new RangeError(`a check of several looks takes at least ${TRIALS_LEAST} simulated trials, not ${paths.length}`)
    if (paths.some((path) => path.length !== shares.length))
      throw new RangeError(`each trial needs a count for each of the ${shares.length} looks`)
  }
  const half = Math.ceil(healthy.length / 2)
  const fit = healthy.slice(0, half)
  let going = [...fit]
  const stopBelow = shares.map((share, look): number | null => {
    // a further trial lies below the k-th of n in order with a chance of k/(n + 1): so many of the fitted ones may lie below or on it
    const room = Math.floor(falseAlarm * share * (fit.length + 1) + 1e-9) - (fit.length - going.length)
    const counts = going.map((path) => path[look]!).sort((a, b) => a - b)
    // equal counts stay together
    const limit = room <= 0 ? null : (counts[room - 1] ?? null)
    if (limit === null) return null
    going = going.filter((path) => path[look]! >= limit)
    return limit
  })
  const slowerLooks = slower.map((path) => lookOfStop(path, stopBelow) ?? shares.length)
  const stopped = (paths: TrialPaths): number => paths.filter((path) => lookOfStop(path, stopBelow) !== null).length / paths.length
  return {
    shares,
    stopBelow,
    falseAlarmFitted: stopped(fit),
    falseAlarm: stopped(healthy.slice(half)),
    miss: 1 - stopped(slower),
    stoppedBy: shares.map((_, look) => slowerLooks.filter((at) => at <= look).length / slower.length),
  }
}

/** Fewer simulated trials fix no border. */
export const TRIALS_LEAST = 40

/** The first look, from 0, at which a count lies below its limit; null: none. A path may be shorter than the plan. */
function lookOfStop(path: readonly number[], stopBelow: readonly (number | null)[]): number | null {
  const at = path.findIndex((count, look) => {
    const limit = stopBelow[look]
    return limit !== null && limit !== undefined && count < limit
  })
  return at < 0 ? null : at
}

/** How a trial stands. */
export interface TrialStanding {
  readonly state: 'stopped: below what the forecast allows' | 'goes on' | 'passed' | 'above the band'
  /** looks that have been taken */
  readonly looks: number
  /** the look that stopped it; null: none did */
  readonly stoppedAt: number | null
  readonly count: number
}

/**
 * How a trial stands after its looks so far.
 *
 * @param counts  at each look so far
 * @param high    of the band; more than that makes one ask whether the trial counted right
 * @throws RangeError  if there is no look, there are more than planned, or a count falls
 * @example standingOf([20, 41], { stopBelow: [18, 40] }, 50).state // => 'passed'
 */
export function standingOf(counts: readonly number[], { stopBelow }: Pick<SequentialPlan, 'stopBelow'>, high: number): TrialStanding {
  if (counts.length === 0 || counts.length > stopBelow.length)
    throw new RangeError(`a trial of ${stopBelow.length} looks has 1 to ${stopBelow.length} counts, not ${counts.length}`)
  const falls = counts.findIndex((count, look) => !Number.isInteger(count) || count < (counts[look - 1] ?? 0))
  if (falls >= 0) throw new RangeError(`counts are whole numbers that never fall, and look ${falls + 1} says ${counts[falls]}`)
  const stoppedAt = lookOfStop(counts, stopBelow)
  const count = counts.at(-1)!
  const whole = counts.length === stopBelow.length
  const state =
    stoppedAt !== null ? 'stopped: below what the forecast allows' : !whole ? 'goes on' : count > high ? 'above the band' : 'passed'
  return { state, looks: counts.length, stoppedAt, count }
}
