import { needSample } from '../samples.ts'
import { StatisticsError } from '../statisticsError.ts'
import { Tally } from './tally.ts'

/**
 * Correlation of each value with the next: r₁ = Σ(xᵢ − x̄)(xᵢ₊₁ − x̄)/Σ(xᵢ − x̄)².
 *
 * @param values  two or more, in their order, not all equal
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_NO_SPREAD
 * @example lag1([1, 3, 2]) // => -0.5
 */
export function lag1(values: readonly number[]): number {
  needSample('a correlation of neighbours', values, 'value', 2)
  const mean = Tally.of(values).mean!
  let cross = 0
  let square = 0
  for (let i = 0; i < values.length; i++) {
    square += (values[i]! - mean) ** 2
    if (i > 0) cross += (values[i]! - mean) * (values[i - 1]! - mean)
  }
  if (square === 0)
    throw new StatisticsError('E_NO_SPREAD', `All ${values.length} values are ${values[0]}: neighbours have no correlation.`)
  return cross / square
}
