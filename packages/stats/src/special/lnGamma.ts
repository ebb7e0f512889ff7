import { needPositive } from './domain.ts'

const HALF_LN_TWO_PI = 0.5 * Math.log(2 * Math.PI)
const LANCZOS = [
  0.9999999999998099, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
  -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
]

/**
 * Logarithm of the gamma function.
 *
 * @param x  above 0
 * @returns  error at most 1e-14 of max(1, value)
 * @throws StatisticsError E_DOMAIN
 * @see Lanczos, A precision approximation of the gamma function (1964): g = 7, nine terms
 * @example lnGamma(5) // => 3.178053830347945
 */
export function lnGamma(x: number): number {
  needPositive('lnGamma', 'x', x)
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - lnGamma(1 - x)
  const z = x - 1
  const t = z + 7.5
  let sum = LANCZOS[0]!
  for (let i = 1; i < 9; i++) sum += LANCZOS[i]! / (z + i)
  return HALF_LN_TWO_PI + (z + 0.5) * Math.log(t) - t + Math.log(sum)
}
