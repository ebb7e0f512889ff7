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
  const inverseSquare = 1 / (at * at)
  let series = 0
  for (let k = BERNOULLI.length; k >= 1; k--) series = (series + BERNOULLI[k - 1]! / (2 * k)) * inverseSquare
  return Math.log(at) - 0.5 / at - series - below
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
  const inverseSquare = 1 / (at * at)
  let series = 0
  for (let k = BERNOULLI.length; k >= 1; k--) series = (series + BERNOULLI[k - 1]!) * inverseSquare
  return below + 1 / at + 0.5 * inverseSquare + series / at
}
