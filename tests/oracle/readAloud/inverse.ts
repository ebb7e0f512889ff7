/** One duration from one uniform: the inverse formulas of MODEL.md §9, written out a second time. */
import { type Distribution, quantile } from '@loopwright/stats'
import { normalInverse, normalShare } from './normal.ts'

/** The first place in the list whose cumulated weight exceeds u times the sum; the last one catches rounding. (MODEL.md §8, §9) */
export function firstBeyond(u: number, weights: readonly number[]): number {
  let sum = 0
  for (const weight of weights) sum += weight
  let cumulated = 0
  for (let index = 0; index < weights.length; index++) {
    cumulated += weights[index]!
    if (u * sum < cumulated) return index
  }
  return weights.length - 1
}

export function inverse(d: Distribution, u: number): number {
  switch (d.kind) {
    case 'constant':
      return d.value
    case 'uniform':
      return d.min + (d.max - d.min) * u
    case 'triangular': {
      const width = d.max - d.min
      if (u < (d.mode - d.min) / width) return d.min + Math.sqrt(u * width * (d.mode - d.min))
      return d.max - Math.sqrt((1 - u) * width * (d.max - d.mode))
    }
    case 'exponential':
      return -d.mean * Math.log1p(-u)
    case 'lognormal': {
      const variance = Math.log1p(d.cv * d.cv)
      return Math.exp(Math.log(d.mean) - variance / 2 + Math.sqrt(variance) * normalInverse(u))
    }
    case 'weibull':
      return d.scale * (-Math.log1p(-u)) ** (1 / d.shape)
    case 'gamma':
    case 'pert':
      return quantile(d, u)
    case 'empirical': {
      const sorted = [...d.values].sort((a, b) => a - b)
      if (!d.interpolate) return sorted[Math.floor(u * sorted.length)]!
      const h = (sorted.length - 1) * u
      const below = Math.floor(h)
      if (below + 1 >= sorted.length) return sorted[below]!
      return sorted[below]! + (h - below) * (sorted[below + 1]! - sorted[below]!)
    }
    case 'discrete':
      return d.values[firstBeyond(u, d.weights)]!
    case 'replay':
      throw new Error('a replay list has no inverse: it is taken by the number of the draw')
    case 'occasional':
      return u < 1 - d.probability ? d.base : d.base + inverse(d.of, (u - 1 + d.probability) / d.probability)
    case 'limited': {
      const low = d.min === null ? 0 : shareBelow(d.of, d.min - d.shift)
      const high = d.max === null ? 1 : shareBelow(d.of, d.max - d.shift)
      return d.shift + inverse(d.of, low + u * (high - low))
    }
  }
}

/** F(x), of the kinds on which the tests put limits */
function shareBelow(d: Distribution, x: number): number {
  switch (d.kind) {
    case 'uniform':
      return Math.min(1, Math.max(0, (x - d.min) / (d.max - d.min)))
    case 'triangular': {
      const width = d.max - d.min
      if (x <= d.min) return 0
      if (x >= d.max) return 1
      if (x < d.mode) return (x - d.min) ** 2 / (width * (d.mode - d.min))
      return 1 - (d.max - x) ** 2 / (width * (d.max - d.mode))
    }
    case 'exponential':
      return x <= 0 ? 0 : -Math.expm1(-x / d.mean)
    case 'lognormal': {
      const variance = Math.log1p(d.cv * d.cv)
      return x <= 0 ? 0 : normalShare((Math.log(x) - Math.log(d.mean) + variance / 2) / Math.sqrt(variance))
    }
    case 'weibull':
      return x <= 0 ? 0 : -Math.expm1(-((x / d.scale) ** d.shape))
    default:
      throw new Error(`limits on ${d.kind} are not written here`)
  }
}
