/** Powers of two from 0 on, as far as MOST asks for them. */
const POWERS = Float64Array.from({ length: 60 }, (_, k) => 2 ** k)
const LEAST = 1.04
const MOST = 40

/**
 * Replaces the number in `io[at]` by its exponential, with the bits of `Math.exp`: what that does between 1.04 and 40, without a call out of the compiled code.
 *
 * Its own steps for smaller numbers, and for much greater ones, differ; they are left to it.
 *
 * @see Sun Microsystems, fdlibm 5.3, e_exp.c (1993)
 */
export function expInto(io: Float64Array, at: number): void {
  const x = io[at]!
  if (!(x > LEAST && x < MOST)) {
    io[at] = Math.exp(x)
    return
  }
  const power = Math.floor(Math.LOG2E * x + 0.5)
  // x less power·ln 2, in two parts
  const high = x - power * 0.6931471803691238
  const low = power * 1.9082149292705877e-10
  const r = high - low
  const square = r * r
  const c =
    r -
    square *
      (0.16666666666666602 +
        square *
          (-0.0027777777777015593 +
            square * (0.00006613756321437934 + square * (-0.0000016533902205465252 + square * 4.1381367970572385e-8))))
  io[at] = (1 - (low - (r * c) / (2 - c) - high)) * POWERS[power]!
}
