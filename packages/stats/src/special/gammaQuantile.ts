import { needPositive, needProbability } from './domain.ts'
import { gammaP, gammaQ } from './incompleteGamma.ts'
import { lnGamma } from './lnGamma.ts'
import { normalQuantile } from './normalQuantile.ts'
import { solveRising } from './solve.ts'

/**
 * Quantile of the gamma distribution with scale 1: x with P(shape, x) = p. Newton in ln x from the Wilson–Hilferty start; above ½ it solves on Q. For a shape of a million
 * and more by an asymptotic inversion, since the series of P takes as many steps as the root of the shape.
 *
 * @param p      above 0 and below 1
 * @param shape  above 0
 * @returns      relative error at most 1e-12
 * @throws StatisticsError E_DOMAIN, E_NOT_SETTLED
 * @see Wilson & Hilferty, The distribution of chi-square (1931); Temme, Asymptotic inversion of incomplete gamma functions (1992; from memory)
 * @example gammaQuantile(0.5, 1) // => 0.6931471805599453
 */
export function gammaQuantile(p: number, shape: number): number {
  needProbability('gammaQuantile', p)
  needPositive('gammaQuantile', 'the shape', shape)
  if (shape >= LARGE) return ofLargeShape(p, shape)
  const onUpper = p > 0.5
  const lnWanted = Math.log(onUpper ? 1 - p : p)
  const lnGammaShape = lnGamma(shape)
  const lnX = solveRising('gammaQuantile', startLn(p, shape), (y, out) => {
    const x = Math.exp(y)
    if (x === 0) {
      // below the smallest double P is x^a / Γ(a + 1) to all digits
      out[0] = shape * y - Math.log(shape) - lnGammaShape - lnWanted
      out[1] = shape
      return
    }
    const tail = onUpper ? gammaQ(shape, x, lnGammaShape) : gammaP(shape, x, lnGammaShape)
    const gap = Math.log(tail) - lnWanted
    out[0] = onUpper ? -gap : gap
    out[1] = Math.exp(shape * y - x - lnGammaShape) / tail
  })
  return Math.exp(lnX)
}

/**
 * Quantile of the chi-square distribution.
 *
 * @param p   above 0 and below 1
 * @param df  degrees of freedom, above 0
 * @returns   relative error at most 1e-12
 * @throws StatisticsError E_DOMAIN, E_NOT_SETTLED
 * @example chiSquareQuantile(0.5, 2) // => 1.3862943611198906
 */
export function chiSquareQuantile(p: number, df: number): number {
  needPositive('chiSquareQuantile', 'the degrees of freedom', df)
  return 2 * gammaQuantile(p, df / 2)
}

/** shapes from here on are inverted by `ofLargeShape` */
const LARGE = 1e6

/** P = Φ(η·√a) to the first order, x = a·λ(η) with η²/2 = λ − 1 − ln λ; the next two orders move η. */
function ofLargeShape(p: number, shape: number): number {
  const first = normalQuantile(p) / Math.sqrt(shape)
  const eta = first + (-1 / 3 + first / 36 + (first * first) / 1620) / shape - 7 / 405 / (shape * shape)
  const over = 1 / 3 + eta * (1 / 36 + eta * (-1 / 270 + eta * (1 / 4320 + eta / 17010)))
  return shape * (1 + eta + eta * eta * over)
}

function startLn(p: number, shape: number): number {
  const small = (Math.log(p) + lnGamma(shape + 1)) / shape
  if (shape < 1 || p < 1e-4) return Math.min(small, Math.log(shape + 40))
  const spread = 1 / (9 * shape)
  const root = 1 - spread + normalQuantile(p) * Math.sqrt(spread)
  return root <= 0 ? small : Math.log(shape) + 3 * Math.log(root)
}
