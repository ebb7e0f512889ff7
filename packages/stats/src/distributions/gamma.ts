import { gammaQuantile } from '../special/gammaQuantile.ts'
import { gammaP } from '../special/incompleteGamma.ts'
import type { Kind } from './kind.ts'
import { notAboveZero } from './reasons.ts'

/** Gamma by mean and coefficient of variation: shape 1/cv², scale mean·cv². Its inverse is solved for, which takes microseconds and allocates. */
export const gamma: Kind<'gamma'> = {
  fields: { mean: ['positive'], cv: ['ratio', 'standard deviation as a share of the mean'] },
  says: 'by mean and cv, or by shape and scale',
  inverse: () => gammaInto,
  // the cv stays
  longer: (d, by) => ({ ...d, mean: d.mean + by }),
  words: (d, to) => `mean ${to.value(d.mean)}, cv ${to.share(d.cv)}, gamma`,
  reasons: (d) => [...notAboveZero('mean', d.mean), ...notAboveZero('cv', d.cv)],
  parameters: (d) => [1 / (d.cv * d.cv), d.mean * (d.cv * d.cv)],
  mean: (d) => d.mean,
  variance: (d) => (d.mean * d.cv) ** 2,
  cdf: (d, x) => (x <= 0 ? 0 : gammaP(1 / d.cv ** 2, x / (d.mean * d.cv ** 2))),
  momentBelow(d, order, x) {
    if (x <= 0) return 0
    const whole = order === 1 ? d.mean : d.mean ** 2 * (1 + d.cv ** 2)
    return whole * gammaP(1 / d.cv ** 2 + order, x / (d.mean * d.cv ** 2))
  },
}

/** parameters: shape, scale */
function gammaInto(p: Float64Array, o: number, io: Float64Array): void {
  io[0] = p[o + 1]! * gammaQuantile(io[0]!, p[o]!)
}
