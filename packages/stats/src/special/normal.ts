import { gammaP, gammaQ } from './incompleteGamma.ts'

/**
 * Complementary error function, exact in its own tail.
 *
 * @returns relative error at most 1e-12
 * @example erfc(1) // => 0.15729920705028513
 */
export function erfc(x: number): number {
  return x >= 0 ? gammaQ(0.5, x * x) : 1 + gammaP(0.5, x * x)
}

/**
 * Normal distribution function Φ(z); for an upper tail use normalCdf(−z), never 1 − normalCdf(z).
 *
 * @returns relative error at most 1e-12, also at z = −30
 * @example normalCdf(-1.959963984540054) // => 0.025
 */
export function normalCdf(z: number): number {
  return 0.5 * erfc(-z / Math.SQRT2)
}
