import { type Kind, momentOfValuesBelow, power, weightBelow } from './kind.ts'
import { notAboveZero, notValues } from './reasons.ts'

/** A few values with weights; the first i with u·Σw < w₀ + … + wᵢ, in the listed order: a list that does not rise has an inverse that does not rise either. */
export const discrete: Kind<'discrete'> = {
  fields: { values: ['values'], weights: ['numbers', 'one weight per value'] },
  says: 'a few times with their weights',
  inverse: () => discreteInto,
  atoms: true,
  words: (d, to) => `${d.values.length} values by weight, mean ${to.mean(d)}`,
  reasons(d) {
    const found = [...notValues('values', d.values)]
    if (!Array.isArray(d.weights) || d.weights.length === 0) return [...found, 'weights is empty; give one weight for each value']
    const row = d.weights.findIndex((weight) => notAboveZero('', weight).length > 0)
    if (row >= 0) found.push(`weights holds ${d.weights[row]} in row ${row + 1}; each must be above 0`)
    if (Array.isArray(d.values) && d.values.length !== d.weights.length) {
      found.push(`there are ${d.values.length} values and ${d.weights.length} weights; give one weight for each value`)
    }
    return found
  },
  parameters: (d) => [d.values.length, ...cumulativeShares(d.weights), ...d.values],
  mean: (d) => momentOfValuesBelow(d.values, d.weights, 1, Infinity, true),
  variance(d) {
    const mean = momentOfValuesBelow(d.values, d.weights, 1, Infinity, true)
    const total = d.weights.reduce((sum, weight) => sum + weight, 0)
    return d.values.reduce((sum, value, i) => sum + (d.weights[i]! / total) * power(value - mean, 2), 0)
  },
  cdf: (d, x, inclusive) => weightBelow(d.values, d.weights, x, inclusive),
  momentBelow: (d, order, x, inclusive) => momentOfValuesBelow(d.values, d.weights, order, x, inclusive),
}

/** Running sums of the weights, in the listed order. @example [...cumulativeShares([52, 31, 17])] // => [52, 83, 100] */
export function cumulativeShares(weights: readonly number[]): Float64Array {
  const sums = new Float64Array(weights.length)
  let sum = 0
  for (let i = 0; i < weights.length; i++) {
    sum += weights[i]!
    sums[i] = sum
  }
  return sums
}

/**
 * Which share a uniform falls into: the first i with u·Σw < w₀ + … + wᵢ; the last one catches rounding. Allocates nothing.
 *
 * @param cumulative  running sums at offset … offset + count − 1
 * @param uniforms    holds the uniform at `at`, above 0 and below 1
 * @returns           index of the share, from 0
 * @example shareIndexAt(cumulativeShares([52, 31, 17]), 0, 3, Float64Array.of(0.8125), 0) // => 1
 */
export function shareIndexAt(cumulative: Float64Array, offset: number, count: number, uniforms: Float64Array, at: number): number {
  const last = count - 1
  const target = uniforms[at]! * cumulative[offset + last]!
  let i = 0
  while (i < last && !(target < cumulative[offset + i]!)) i++
  return i
}

/** parameters: n, then n running sums of the weights, then n values */
function discreteInto(p: Float64Array, o: number, io: Float64Array): void {
  const n = p[o]! | 0
  io[0] = p[o + 1 + n + shareIndexAt(p, o + 1, n, io, 0)]!
}
