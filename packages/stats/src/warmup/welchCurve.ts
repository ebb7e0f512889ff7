import { notACount, tooFew } from '../messages.ts'
import { StatisticsError } from '../statisticsError.ts'

/**
 * Welch's smoothed mean over replications, for the eye: point i is the mean of 2s + 1 neighbours, s = min(window, i − 1).
 *
 * @param replications  five or more, of equal length m
 * @param window        whole number, 0 … ⌊m/4⌋
 * @returns             m − window points
 * @throws StatisticsError E_TOO_FEW, E_UNEQUAL_LENGTH, E_DOMAIN
 * @see Welch, The statistical analysis of simulation results (1983)
 * @example welchCurve([[1, 2, 9, 4], [3, 4, 9, 6], [2, 3, 9, 5], [2, 3, 9, 5], [2, 3, 9, 5]], 1) // => [2, 4.666666666666667, 5.666666666666667]
 */
export function welchCurve(replications: readonly (readonly number[])[], window: number): number[] {
  if (replications.length < 5) throw tooFew('a smoothed curve', replications.length, 'replication', 5)
  const m = replications[0]!.length
  const odd = replications.findIndex((one) => one.length !== m)
  if (odd >= 0) {
    throw new StatisticsError(
      'E_UNEQUAL_LENGTH',
      `Replication ${odd} has ${replications[odd]!.length} intervals and the first has ${m}: all must be of one length.`,
    )
  }
  if (!(Number.isInteger(window) && window >= 0)) throw notACount('The window', window, 0)
  if (window > Math.floor(m / 4)) {
    throw new StatisticsError(
      'E_DOMAIN',
      `The window ${window} is more than a quarter of ${m} intervals: choose at most ${Math.floor(m / 4)}.`,
    )
  }
  const means = replications[0]!.map((_, i) => replications.reduce((sum, one) => sum + one[i]!, 0) / replications.length)
  return means.slice(0, m - window).map((_, i) => {
    const reach = Math.min(window, i)
    const near = means.slice(i - reach, i + reach + 1)
    return near.reduce((sum, value) => sum + value, 0) / near.length
  })
}
