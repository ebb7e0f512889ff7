import { needProbability } from './domain.ts'

/** From the middle this far on, one quotient of polynomials; farther out others, of a logarithm. */
const MIDDLE = 0.425

/**
 * Replaces the probability in `io[at]` by its normal quantile; allocates nothing. The probability must lie above 0 and below 1.
 *
 * The coefficients stand in the polynomials as they are: read from a list they took longer than the arithmetic.
 *
 * @see Wichura, Algorithm AS 241: the percentage points of the normal distribution (1988), PPND16
 */
export function normalQuantileInto(io: Float64Array, at: number): void {
  if (Math.abs(io[at]! - 0.5) <= MIDDLE) middleInto(io, at)
  else tailInto(io, at)
}

/** Probabilities that are replaced at once. */
const SOME = 64

/** Those of a call that lie in the tails, and their places: nothing is kept here from one call to the next. */
const tailProbabilities = new Float64Array(SOME)
const tailPlaces = new Int32Array(SOME)

/**
 * The same for `count` of them from `first` on: all as if they lay in the middle, so that none waits for the other and nothing has to be guessed, then those in the tails anew.
 *
 * @example ((io) => (normalQuantilesInto(io, 0, 2), [...io]))(Float64Array.of(0.5, 0.975)) // => [0, 1.9599639845400536]
 */
export function normalQuantilesInto(io: Float64Array, first: number, count: number): void {
  const end = first + count
  for (let from = first; from < end; from += SOME) someInto(io, from, Math.min(from + SOME, end))
}

function someInto(io: Float64Array, from: number, to: number): void {
  let tails = 0
  for (let at = from; at < to; at++) {
    const p = io[at]!
    tailProbabilities[tails] = p
    tailPlaces[tails] = at
    // 1 where it lies in a tail, else 0
    tails += Math.ceil(Math.abs(p - 0.5) - MIDDLE) | 0
    middleInto(io, at)
  }
  for (let k = 0; k < tails; k++) {
    const at = tailPlaces[k]!
    io[at] = tailProbabilities[k]!
    tailInto(io, at)
  }
}

/** Replaces a probability no farther than MIDDLE from the middle by its quantile. */
function middleInto(io: Float64Array, at: number): void {
  const q = io[at]! - 0.5
  const r = 0.180625 - q * q
  const top =
    ((((((2509.0809287301227 * r + 33430.57558358813) * r + 67265.7709270087) * r + 45921.95393154987) * r + 13731.69376550946) * r +
      1971.5909503065513) *
      r +
      133.14166789178438) *
      r +
    3.3871328727963665
  const bottom =
    ((((((5226.495278852854 * r + 28729.085735721943) * r + 39307.89580009271) * r + 21213.794301586597) * r + 5394.196021424751) * r +
      687.1870074920579) *
      r +
      42.31333070160091) *
      r +
    1
  io[at] = q * (top / bottom)
}

/** Replaces a probability farther than MIDDLE from the middle by its quantile. */
function tailInto(io: Float64Array, at: number): void {
  const p = io[at]!
  const root = Math.sqrt(-Math.log(p < 0.5 ? p : 1 - p))
  if (root <= 5) {
    const r = root - 1.6
    const top =
      ((((((0.0007745450142783414 * r + 0.022723844989269184) * r + 0.2417807251774506) * r + 1.2704582524523684) * r +
        3.6478483247632045) *
        r +
        5.769497221460691) *
        r +
        4.630337846156546) *
        r +
      1.4234371107496835
    const bottom =
      ((((((1.0507500716444169e-9 * r + 0.0005475938084995345) * r + 0.015198666563616457) * r + 0.14810397642748008) * r +
        0.6897673349851) *
        r +
        1.6763848301838038) *
        r +
        2.053191626637759) *
        r +
      1
    io[at] = top / bottom
  } else {
    const r = root - 5
    const top =
      ((((((2.0103343992922881e-7 * r + 2.7115555687434876e-5) * r + 0.0012426609473880784) * r + 0.026532189526576124) * r +
        0.29656057182850487) *
        r +
        1.7848265399172913) *
        r +
        5.463784911164114) *
        r +
      6.657904643501103
    const bottom =
      ((((((2.0442631033899397e-15 * r + 1.421511758316446e-7) * r + 1.8463183175100548e-5) * r + 0.0007868691311456133) * r +
        0.014875361290850615) *
        r +
        0.1369298809227358) *
        r +
        0.599832206555888) *
        r +
      1
    io[at] = top / bottom
  }
  if (p < 0.5) io[at] = -io[at]!
}

/**
 * Normal quantile Φ⁻¹(p).
 *
 * @param p  above 0 and below 1; for an upper tail q use −normalQuantile(q)
 * @returns  relative error at most 2e-15
 * @throws StatisticsError E_DOMAIN
 * @see Wichura, Algorithm AS 241: the percentage points of the normal distribution (1988), PPND16
 * @example normalQuantile(0.975) // => 1.959963984540054
 */
export function normalQuantile(p: number): number {
  needProbability('normalQuantile', p)
  const io = new Float64Array(1)
  io[0] = p
  normalQuantileInto(io, 0)
  return io[0]!
}
