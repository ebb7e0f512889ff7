import { gammaP } from '../special/incompleteGamma.ts'
import type { Kind } from './kind.ts'
import { notAboveZero } from './reasons.ts'

/** Time to an event that does not age. */
export const exponential: Kind<'exponential'> = {
  fields: { mean: ['positive'] },
  says: 'events without memory, such as failures',
  inverse: () => exponentialInto,
  many: exponentialsInto,
  words: (d, to) => `mean ${to.value(d.mean)}, exponential`,
  reasons: (d) => notAboveZero('mean', d.mean),
  parameters: (d) => [d.mean],
  mean: (d) => d.mean,
  variance: (d) => d.mean ** 2,
  cdf: (d, x) => (x <= 0 ? 0 : -Math.expm1(-x / d.mean)),
  momentBelow: (d, order, x) => (x <= 0 ? 0 : order * d.mean ** order * gammaP(order + 1, x / d.mean)),
}

/** parameters: mean */
function exponentialInto(p: Float64Array, o: number, io: Float64Array): void {
  io[0] = -p[o]! * Math.log1p(-io[0]!)
}

function exponentialsInto(p: Float64Array, o: number, io: Float64Array, first: number, count: number): void {
  for (let at = first; at < first + count; at++) io[at] = -p[o]! * Math.log1p(-io[at]!)
}
