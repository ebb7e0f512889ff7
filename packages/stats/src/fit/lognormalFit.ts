import { normalCdf } from '../special/normal.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { type FamilyRules, weightedMean } from './family.ts'

const HALF_LN_TWO_PI = 0.5 * Math.log(2 * Math.PI)

/** Lognormal by mean and sd of the logarithm; maximum likelihood has divisor n. */
export const lognormalFit: FamilyRules = {
  fit(values, weights) {
    const mu = weightedMean(values, weights, Math.log)
    return [mu, Math.sqrt(weightedMean(values, weights, (x) => (Math.log(x) - mu) ** 2))]
  },
  lnDensity([mu, sigma], x) {
    const z = (Math.log(x) - mu) / sigma
    return -Math.log(x) - Math.log(sigma) - HALF_LN_TWO_PI - (z * z) / 2
  },
  lnTails([mu, sigma], x) {
    const z = (Math.log(x) - mu) / sigma
    return { lower: Math.log(normalCdf(z)), upper: Math.log(normalCdf(-z)) }
  },
  quantile: ([mu, sigma], u) => Math.exp(mu + sigma * normalQuantile(u)),
  quantiles: (parameters) => (u) => lognormalFit.quantile(parameters, u),
  distribution: ([mu, sigma]) => ({
    kind: 'lognormal',
    mean: Math.exp(mu + (sigma * sigma) / 2),
    cv: Math.sqrt(Math.expm1(sigma * sigma)),
  }),
}
