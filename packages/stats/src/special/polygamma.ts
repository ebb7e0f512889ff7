import { needPositive } from './domain.ts'

/** Bernoulli numbers B₂, B₄, … B₁₆ */
const BERNOULLI = [1 / 6, -1 / 30, 1 / 42, -1 / 30, 5 / 66, -691 / 2730, 7 / 6, -3617 / 510]

/**
 * Digamma: the slope of lnGamma. Upward recurrence to x ≥ 10, then the asymptotic series.
 *
 * @param x  above 0
 * @returns  relative error at most 1e-13
 * @throws StatisticsError E_DOMAIN
 * @see Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 6.3.5 and 6.3.18 (numbers from memory)
 * @example digamma(1) // => -0.5772156649015329
 */
export function digamma(x: number): number {
  needPositive('digamma', 'x', x)
  let below = 0
  let at = x
  while (at < 10) {
    below += 1 / at
    at += 1
  }
  return Math.log(at) - lnMinusDigammaSeries(at) - below
}

/**
 * ln x − digamma(x), which is near 1/(2x): without the cancelling that the difference would have for large x.
 *
 * @param x  above 0
 * @throws StatisticsError E_DOMAIN
 * @example lnMinusDigamma(1e9) // => 5.000000000833333e-10
 */
export function lnMinusDigamma(x: number): number {
  return x < 10 ? Math.log(x) - digamma(x) : lnMinusDigammaSeries(x)
}

/** x ≥ 10 */
function lnMinusDigammaSeries(x: number): number {
  const inverseSquare = 1 / (x * x)
  let series = 0
  for (let k = BERNOULLI.length; k >= 1; k--) series = (series + BERNOULLI[k - 1]! / (2 * k)) * inverseSquare
  return 0.5 / x + series
}

/**
 * Trigamma: the slope of digamma.
 *
 * @param x  above 0
 * @returns  relative error at most 1e-13
 * @throws StatisticsError E_DOMAIN
 * @see Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 6.4.6 and 6.4.12 (numbers from memory)
 * @example trigamma(1) // => 1.6449340668482264
 */
export function trigamma(x: number): number {
  needPositive('trigamma', 'x', x)
  let below = 0
  let at = x
  while (at < 10) {
    below += 1 / (at * at)
    at += 1
  }
  return below + 1 / at + trigammaExcessSeries(at)
}

/**
 * trigamma(x) − 1/x, which is near 1/(2x²): without the cancelling that the difference would have for large x.
 *
 * @param x  above 0
 * @throws StatisticsError E_DOMAIN
 * @example trigammaExcess(1e9) // => 5.000000001666666e-19
 */
export function trigammaExcess(x: number): number {
  return x < 10 ? trigamma(x) - 1 / x : trigammaExcessSeries(x)
}

/** x ≥ 10 */
function trigammaExcessSeries(x: number): number {
  const inverseSquare = 1 / (x * x)
  let series = 0
  for (let k = BERNOULLI.length; k >= 1; k--) series = (series + BERNOULLI[k - 1]!) * inverseSquare
  return 0.5 * inverseSquare + series / x
}
