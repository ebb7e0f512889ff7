import { needPositive, needProbability } from './domain.ts'
import { betaTails, lnBeta } from './incompleteBeta.ts'
import { normalQuantile } from './normalQuantile.ts'
import { solveRising } from './solve.ts'

/** A point of 0 … 1 together with 1 − x, each with all its digits. */
export interface BetaPoint {
  readonly x: number
  readonly complement: number
}

/**
 * Quantile of the beta distribution: x with I_x(a, b) = p. Newton in ln(x/(1 − x)); above ½ by symmetry.
 *
 * @param p  above 0 and below 1
 * @param a  above 0
 * @param b  above 0
 * @returns  x and 1 − x, relative error of each at most 1e-11
 * @throws StatisticsError E_DOMAIN, E_NOT_SETTLED
 * @example betaQuantile(0.5, 3, 3) // => { x: 0.5, complement: 0.5 }
 */
export function betaQuantile(p: number, a: number, b: number): BetaPoint {
  needProbability('betaQuantile', p)
  needPositive('betaQuantile', 'a', a)
  needPositive('betaQuantile', 'b', b)
  if (p <= 0.5) return lowerHalf(p, a, b)
  const mirrored = lowerHalf(1 - p, b, a)
  return { x: mirrored.complement, complement: mirrored.x }
}

function lowerHalf(p: number, a: number, b: number): BetaPoint {
  const lnB = lnBeta(a, b)
  const lnWanted = Math.log(p)
  const mean = a / (a + b)
  const sd = Math.sqrt((mean * (1 - mean)) / (a + b + 1))
  const near = mean + normalQuantile(p) * sd
  const lnSmall = (lnWanted + Math.log(a) + lnB) / a
  const start = lnSmall < Math.log(Math.max(near, 0) / 2) || near <= 0 ? lnSmall : Math.log(near) - Math.log(1 - Math.min(near, 1 - 1e-9))
  const logit = solveRising('betaQuantile', start, (y, out) => {
    const x = lower(y)
    const complement = lower(-y)
    if (x < 1e-290) {
      out[0] = a * y - Math.log(a) - lnB - lnWanted
      out[1] = a
      return
    }
    const tail = betaTails(a, b, x, complement).lower
    out[0] = Math.log(tail) - lnWanted
    out[1] = Math.exp(a * Math.log(x) + b * Math.log(complement) - lnB) / tail
  })
  return { x: lower(logit), complement: lower(-logit) }
}

/** 1/(1 + e^−y) */
const lower = (y: number): number => (y < 0 ? Math.exp(y) / (1 + Math.exp(y)) : 1 / (1 + Math.exp(-y)))
