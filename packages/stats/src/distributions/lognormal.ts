import { expInto } from '../special/exp.ts'
import { normalCdf } from '../special/normal.ts'
import { normalQuantileInto, normalQuantilesInto } from '../special/normalQuantile.ts'
import type { Kind } from './kind.ts'
import { notAboveZero } from './reasons.ts'

/** The usual form of hand work: never below zero, some long ones; by mean and coefficient of variation. */
export const lognormal: Kind<'lognormal'> = {
  fields: { mean: ['positive'], cv: ['ratio', 'standard deviation as a share of the mean'] },
  says: 'hand work, repairs; by mean and cv, or by mu, sigma and unit',
  inverse: () => lognormalInto,
  many: lognormalsInto,
  // the cv stays
  longer: (d, by) => ({ ...d, mean: d.mean + by }),
  words: (d, to) => `mean ${to.value(d.mean)}, cv ${to.share(d.cv)}, lognormal`,
  reasons: (d) => [...notAboveZero('mean', d.mean), ...notAboveZero('cv', d.cv)],
  parameters(d) {
    const variance = Math.log1p(d.cv * d.cv)
    return [Math.log(d.mean) - variance / 2, Math.sqrt(variance)]
  },
  mean: (d) => d.mean,
  variance: (d) => (d.mean * d.cv) ** 2,
  cdf: (d, x) => partBelow(d.mean, d.cv, 0, x),
  momentBelow: (d, order, x) => (order === 1 ? d.mean : d.mean ** 2 * (1 + d.cv ** 2)) * partBelow(d.mean, d.cv, order, x),
}

/** share of the moment of that order that lies below x */
function partBelow(mean: number, cv: number, order: number, x: number): number {
  if (x <= 0) return 0
  const variance = Math.log1p(cv * cv)
  const sigma = Math.sqrt(variance)
  return normalCdf((Math.log(x) - (Math.log(mean) - variance / 2)) / sigma - order * sigma)
}

/** parameters: mean and sd of the logarithm */
export function lognormalInto(p: Float64Array, o: number, io: Float64Array): void {
  normalQuantileInto(io, 0)
  lognormalFromNormal(p, o, io, 0)
}

function lognormalsInto(p: Float64Array, o: number, io: Float64Array, first: number, count: number): void {
  normalQuantilesInto(io, first, count)
  for (let at = first; at < first + count; at++) lognormalFromNormal(p, o, io, at)
}

/** The same from the normal quantile of the uniform. */
export function lognormalFromNormal(p: Float64Array, o: number, io: Float64Array, at: number): void {
  io[at] = p[o]! + p[o + 1]! * io[at]!
  expInto(io, at)
}
