import { gammaQuantile } from '../special/gammaQuantile.ts'
import { gammaTable } from '../special/gammaTable.ts'
import { gammaTails } from '../special/incompleteGamma.ts'
import { lnGamma } from '../special/lnGamma.ts'
import { lnMinusDigamma, trigammaExcess } from '../special/polygamma.ts'
import { StatisticsError } from '../statisticsError.ts'
import { type FamilyRules, weightedMean } from './family.ts'

/**
 * Gamma by shape and scale.
 *
 * @see Minka, Estimating a gamma distribution (2002): start and Newton's step for the shape
 */
export const gammaFit: FamilyRules = {
  fit(values, weights) {
    const mean = weightedMean(values, weights, (x) => x)
    // ln(mean) − mean(ln x), written so that values near one another lose no digits
    const s = weightedMean(values, weights, (x) => (x - mean) / mean - Math.log1p((x - mean) / mean))
    const shape = shapeFor(s)
    return [shape, mean / shape]
  },
  lnDensity: ([shape, scale], x) => (shape - 1) * Math.log(x) - x / scale - shape * Math.log(scale) - lnGamma(shape),
  lnTails([shape, scale], x) {
    const { lower, upper } = gammaTails(shape, x / scale)
    return { lower: Math.log(lower), upper: Math.log(upper) }
  },
  quantile: ([shape, scale], u) => scale * gammaQuantile(u, shape),
  quantiles([shape, scale]) {
    const table = gammaTable(shape)
    return (u) => scale * table(u)
  },
  distribution: ([shape, scale]) => ({ kind: 'gamma', mean: shape * scale, cv: 1 / Math.sqrt(shape) }),
}

/** the shape k with ln k − ψ(k) = s */
function shapeFor(s: number): number {
  let shape = (3 - s + Math.sqrt((s - 3) ** 2 + 24 * s)) / (12 * s)
  for (let n = 0; n < 100; n++) {
    const step = (s - lnMinusDigamma(shape)) / trigammaExcess(shape)
    const next = shape - step
    if (Math.abs(step) <= 1e-12 * shape) return next
    shape = next > 0 ? next : shape / 2
  }
  throw new StatisticsError('E_NOT_SETTLED', 'The gamma fit does not settle: the values are too nearly equal; use a constant.')
}
