import { meanOf } from '../accumulate/mean.ts'
import type { Distribution } from '../distributions/distribution.ts'
import type { Stream } from '../random/stream.ts'
import { needSample } from '../samples.ts'
import { StatisticsError } from '../statisticsError.ts'

const VALUES_MIN = 5

/**
 * Weights of the Bayesian bootstrap: how the n values might have been weighted, had others been measured. Each task has weights of its own; both scenarios of a comparison share them.
 *
 * @param n        values of the task, five or more
 * @param uniform  stream `input/<task>`, its replication the index of the outer draw
 * @returns        n weights that sum to 1
 * @throws StatisticsError E_TOO_FEW
 * @see Rubin, The Bayesian bootstrap (1981)
 * @example dirichletWeights(20, stream('inputs', 0, 'wiring')).length // => 20
 */
export function dirichletWeights(n: number, uniform: Stream): number[] {
  if (!(Number.isInteger(n) && n >= VALUES_MIN)) {
    throw new StatisticsError(
      'E_TOO_FEW',
      `${n} values are too few to reckon with their uncertainty: measure ${VALUES_MIN} or more, or use an expert's triple.`,
    )
  }
  const parts = Array.from({ length: n }, () => -Math.log(uniform()))
  const sum = parts.reduce((all, part) => all + part, 0)
  return parts.map((part) => part / sum)
}

/**
 * The values with such weights, to draw from.
 *
 * @example distributionMean(reweighted([30, 32, 40], [0.5, 0.3, 0.2])) // => 32.6
 */
export function reweighted(values: readonly number[], weights: readonly number[]): Distribution {
  return { kind: 'discrete', values: [...values], weights: [...weights] }
}

/**
 * Variance of the weighted mean over such weights: s²/(n + 1), s² with divisor n. For checks by hand.
 *
 * @example weightedMeanVariance([1, 2, 3, 4, 5]) // => 0.3333333333333333
 */
export function weightedMeanVariance(values: readonly number[]): number {
  needSample('a variance', values, 'value', 2)
  const mean = meanOf(values)
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length / (values.length + 1)
}
