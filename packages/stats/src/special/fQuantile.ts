import { betaQuantile } from './betaQuantile.ts'
import { needPositive, needProbability } from './domain.ts'

/**
 * Quantile of the F distribution.
 *
 * @param p               above 0 and below 1
 * @param dfNumerator     above 0
 * @param dfDenominator   above 0
 * @returns               relative error at most 1e-10
 * @throws StatisticsError E_DOMAIN, E_NOT_SETTLED
 * @example fQuantile(0.5, 2, 2) // => 1
 */
export function fQuantile(p: number, dfNumerator: number, dfDenominator: number): number {
  needProbability('fQuantile', p)
  needPositive('fQuantile', 'the degrees of freedom of the numerator', dfNumerator)
  needPositive('fQuantile', 'the degrees of freedom of the denominator', dfDenominator)
  const { x, complement } = betaQuantile(p, dfNumerator / 2, dfDenominator / 2)
  return (dfDenominator * x) / (dfNumerator * complement)
}
