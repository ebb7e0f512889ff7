import { gammaP } from '../special/incompleteGamma.ts'
import { lnGamma } from '../special/lnGamma.ts'
import type { Kind } from './kind.ts'
import { notAboveZero } from './reasons.ts'

/** Weibull by shape and scale; shape above 1: wears out. */
export const weibull: Kind<'weibull'> = {
  fields: { shape: ['number', 'shape, above 0'], scale: ['positive'] },
  says: 'wear; by shape and scale, or by shape and mean',
  inverse: () => weibullInto,
  words: (d, to) => `mean ${to.mean(d)}, shape ${to.number(d.shape)}, Weibull`,
  reasons: (d) => [...notAboveZero('shape', d.shape), ...notAboveZero('scale', d.scale)],
  parameters: (d) => [1 / d.shape, d.scale],
  mean: (d) => d.scale * wholeMoment(d.shape, 1),
  variance: (d) => d.scale ** 2 * (wholeMoment(d.shape, 2) - wholeMoment(d.shape, 1) ** 2),
  cdf: (d, x) => (x <= 0 ? 0 : -Math.expm1(-((x / d.scale) ** d.shape))),
  momentBelow: (d, order, x) =>
    x <= 0 ? 0 : d.scale ** order * wholeMoment(d.shape, order) * gammaP(1 + order / d.shape, (x / d.scale) ** d.shape),
}

/** Γ(1 + order/shape) */
const wholeMoment = (shape: number, order: number): number => Math.exp(lnGamma(1 + order / shape))

/** parameters: 1/shape, scale */
function weibullInto(p: Float64Array, o: number, io: Float64Array): void {
  io[0] = p[o + 1]! * (-Math.log1p(-io[0]!)) ** p[o]!
}
