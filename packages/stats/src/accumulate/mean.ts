import { needSample } from '../samples.ts'

/**
 * Mean of a list: its values added up in their order, divided by their count.
 *
 * @param values  one or more
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER
 * @example meanOf([1, 2, 6]) // => 3
 */
export function meanOf(values: readonly number[]): number {
  needSample('a mean', values, 'value', 1)
  let sum = 0
  for (const value of values) sum += value
  return sum / values.length
}
