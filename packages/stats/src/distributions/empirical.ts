import { type Kind, momentOfValuesBelow, power, weightBelow } from './kind.ts'
import { notValues } from './reasons.ts'

/**
 * Observed values: resampled as they are, or interpolated between neighbours (which lowers the mean of skewed data). Neither goes beyond the largest value seen.
 */
export const empirical: Kind<'empirical'> = {
  fields: { values: ['values'], interpolate: ['flag', 'draw between the observed values too; default false'] },
  says: 'observed times, drawn at random',
  inverse: (d) => (d.interpolate ? interpolatedInto : empiricalInto),
  atoms: true,
  words: (d, to) => `${d.values.length} measured values, mean ${to.mean(d)}${d.interpolate ? ', interpolated' : ''}`,
  reasons: (d) => notValues('values', d.values),
  parameters: (d) => [d.values.length, ...[...d.values].sort((a, b) => a - b)],
  mean: (d) => wholeMoment(d.values, d.interpolate, 1),
  variance(d) {
    const mean = wholeMoment(d.values, d.interpolate, 1)
    return wholeMoment(
      d.values.map((value) => value - mean),
      d.interpolate,
      2,
    )
  },
  cdf: (d, x, inclusive) =>
    d.interpolate ? sumOfSteps(d.values, (a, b) => stepBelow(a, b, 0, x, inclusive)) : weightBelow(d.values, null, x, inclusive),
  momentBelow: (d, order, x, inclusive) =>
    d.interpolate
      ? sumOfSteps(d.values, (a, b) => stepBelow(a, b, order, x, inclusive))
      : momentOfValuesBelow(d.values, null, order, x, inclusive),
}

function wholeMoment(values: readonly number[], interpolate: boolean, order: 1 | 2): number {
  if (!interpolate) return values.reduce((sum, value) => sum + power(value, order), 0) / values.length
  return sumOfSteps(values, (a, b) => (order === 1 ? (a + b) / 2 : (a * a + a * b + b * b) / 3))
}

/** mean over the stretches between neighbours, each of which has the same chance */
function sumOfSteps(values: readonly number[], of: (a: number, b: number) => number): number {
  const sorted = [...values].sort((a, b) => a - b)
  if (sorted.length === 1) return of(sorted[0]!, sorted[0]!)
  let sum = 0
  for (let i = 1; i < sorted.length; i++) sum += of(sorted[i - 1]!, sorted[i]!)
  return sum / (sorted.length - 1)
}

/** E[X^order; X ≤ x] of an even spread over a … b, or of the one value where a = b */
function stepBelow(a: number, b: number, order: 0 | 1 | 2, x: number, inclusive: boolean): number {
  if (a === b) return a < x || (inclusive && a === x) ? a ** order : 0
  const top = Math.min(b, Math.max(a, x))
  return (top ** (order + 1) - a ** (order + 1)) / ((order + 1) * (b - a))
}

/** parameters: n, then the sorted values */
function empiricalInto(p: Float64Array, o: number, io: Float64Array): void {
  const n = p[o]!
  io[0] = p[o + 1 + Math.floor(io[0]! * n)]!
}

/** parameters: n, then the sorted values */
function interpolatedInto(p: Float64Array, o: number, io: Float64Array): void {
  const n = p[o]!
  const h = (n - 1) * io[0]!
  const i = Math.floor(h)
  const low = p[o + 1 + i]!
  io[0] = i + 1 < n ? low + (h - i) * (p[o + 2 + i]! - low) : low
}
