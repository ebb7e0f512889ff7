import { needSample } from '../samples.ts'

/** How the run ended: the constant tail of a dead line would look perfect. */
export type RunEnd = 'time' | 'gridlock' | 'out of products'

/** too short: fewer than 50 intervals; not converged: the steadiest part begins in the second half; ended early: gridlock or out of products */
export type WarmupStatus = 'ok' | 'too short' | 'not converged' | 'ended early'

/** What MSER-5 says of one series. */
export interface WarmupCut {
  /** batches of five that were looked at */
  readonly batches: number
  /** batches to delete; null where the series was not looked at */
  readonly d: number | null
  /** the statistic by d, d = 0 … batches − 5: mean square distance from the mean of what stays, over what stays once more */
  readonly curve: readonly number[]
  /** intervals to delete; null: no cut is given, and no steady-state figure may be */
  readonly delete: number | null
  /** mean of the whole batches that stay; null without a cut */
  readonly meanAfter: number | null
  readonly status: WarmupStatus
}

const BATCH = 5
const BATCHES_MIN = 10
const STAY_MIN = 5

/**
 * Where the warm-up ends, by the rule that the mean of the rest be best known: MSER on means of five, with guards.
 *
 * Feed it the mean over replications of output per interval, and of products in line; the larger cut counts.
 * The interval should be five cycles of the slowest station or more, and a multiple of the mix cycle where the mix is a pattern.
 *
 * @param values  one an interval, in order
 * @param end     how the runs ended
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER
 * @see White, An effective truncation heuristic for bias reduction in simulation output (1997)
 * @see White, Cobb & Spratt, A comparison of five steady-state truncation heuristics for simulation (2000)
 * @see Wang & Glynn, On the marginal standard error rule and the testing of initial transient deletion methods (2016): its limits
 * @example mser5(Array.from({ length: 60 }, () => 7)).delete // => 0
 */
export function mser5(values: readonly number[], end: RunEnd = 'time'): WarmupCut {
  needSample('a warm-up', values, 'interval', 1)
  const batches = Math.floor(values.length / BATCH)
  const none = { batches, d: null, curve: [], delete: null, meanAfter: null }
  if (end !== 'time') return { ...none, status: 'ended early' }
  if (batches < BATCHES_MIN) return { ...none, status: 'too short' }
  const { curve, means } = statistic(values, batches)
  const least = Math.min(...curve) * (1 + 1e-12)
  const d = curve.findIndex((one) => one <= least)
  if (2 * d >= batches) return { batches, d, curve, delete: null, meanAfter: null, status: 'not converged' }
  return { batches, d, curve, delete: BATCH * d, meanAfter: means[d]!, status: 'ok' }
}

/** one pass from the back, so that each d adds one batch to a running mean and sum of squares */
function statistic(values: readonly number[], batches: number): { curve: number[]; means: number[] } {
  const curve: number[] = []
  const means: number[] = []
  let count = 0
  let mean = 0
  let squares = 0
  for (let j = batches - 1; j >= 0; j--) {
    let batch = 0
    for (let i = 0; i < BATCH; i++) batch += values[BATCH * j + i]!
    batch /= BATCH
    count++
    const distance = batch - mean
    mean += distance / count
    squares += distance * (batch - mean)
    if (count < STAY_MIN) continue
    curve[j] = squares / (count * count)
    means[j] = mean
  }
  return { curve, means }
}

/**
 * The sentence for a series without a cut; null where there is one.
 *
 * @param end  how the runs ended
 * @example warmupSentence(mser5(Array.from({ length: 300 }, (_, k) => (k < 10 ? 0 : k % 3)))) // => null
 */
export function warmupSentence(cut: WarmupCut, end: RunEnd = 'time'): string | null {
  switch (cut.status) {
    case 'ok':
      return null
    case 'too short':
      return `Cannot look for a warm-up in ${cut.batches} batches of 5 intervals: give at least 50 intervals.`
    case 'not converged':
      return `Warm-up not found: the steadiest part begins after ${BATCH * cut.d!} of ${BATCH * cut.batches} intervals; run at least twice as long.`
    case 'ended early':
      return end === 'out of products'
        ? 'The list of products ran out before the end of a run. Once it is empty nothing is made, so that there is no steady production to look at: give products without an end, as shares or as a pattern.'
        : 'A run stood still for good before its end (gridlock). Once nothing moves, nothing can be told of a warm-up: look at why it stood still.'
  }
}
