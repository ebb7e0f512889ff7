import { empirical } from './empirical.ts'
import { type Kind, momentOfValuesBelow, weightBelow } from './kind.ts'
import { notValues } from './reasons.ts'

/** A recorded list, taken in its order: draw k is values[k mod length]; a draw takes no uniform. Its quantile is that of the list, resampled. */
export const replay: Kind<'replay'> = {
  fields: { values: ['values'] },
  says: 'observed times in their order, again and again',
  inverse: () => replayInto,
  atoms: true,
  draws: () => 'index',
  words: (d, to) => `list of ${d.values.length} values in turn, mean ${to.mean(d)}`,
  reasons: (d) => notValues('values', d.values),
  parameters: (d) => [d.values.length, ...d.values],
  mean: (d, inner) => empirical.mean({ kind: 'empirical', values: d.values, interpolate: false }, inner),
  variance: (d, inner) => empirical.variance({ kind: 'empirical', values: d.values, interpolate: false }, inner),
  cdf: (d, x, inclusive) => weightBelow(d.values, null, x, inclusive),
  momentBelow: (d, order, x, inclusive) => momentOfValuesBelow(d.values, null, order, x, inclusive),
}

/** parameters: n, then the values in their order; k counts from 0 */
function replayInto(p: Float64Array, o: number, io: Float64Array, k: number): void {
  io[0] = p[o + 1 + (k % p[o]!)]!
}
