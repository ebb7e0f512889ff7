import { quantileSorted } from 'simple-statistics'
import { notInRange } from '../messages.ts'
import { needSample, sorted } from '../samples.ts'

/**
 * Quantile of a sample, type 7: h = (n − 1)p, linear between neighbours.
 *
 * @param values  one or more, in any order
 * @param p       0 … 1
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_DOMAIN
 * @see Hyndman & Fan, Sample quantiles in statistical packages (1996)
 * @example sampleQuantile([4, 1, 3, 2], 0.3) // => 1.9
 */
export function sampleQuantile(values: readonly number[], p: number): number {
  needSample('a quantile', values, 'value', 1)
  if (!(p >= 0 && p <= 1)) throw notInRange('The share p', p, 0, 1)
  return quantileSorted(sorted(values), p)
}
