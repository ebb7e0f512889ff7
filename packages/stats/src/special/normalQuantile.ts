import { needProbability } from './domain.ts'

/** numerator and denominator of each region, powers rising from 0, eight each: centre, tail, far tail */
const CENTRE_TOP = 0
const CENTRE_BOTTOM = 8
const TAIL_TOP = 16
const TAIL_BOTTOM = 24
const FAR_TOP = 32
const FAR_BOTTOM = 40
const COEFFICIENTS = Float64Array.of(
  ...[3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946],
  ...[45921.95393154987, 67265.7709270087, 33430.57558358813, 2509.0809287301227],
  ...[1, 42.31333070160091, 687.1870074920579, 5394.196021424751],
  ...[21213.794301586597, 39307.89580009271, 28729.085735721943, 5226.495278852854],
  ...[1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045],
  ...[1.2704582524523684, 0.2417807251774506, 0.022723844989269184, 0.0007745450142783414],
  ...[1, 2.053191626637759, 1.6763848301838038, 0.6897673349851],
  ...[0.14810397642748008, 0.015198666563616457, 0.0005475938084995345, 1.0507500716444169e-9],
  ...[6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487],
  ...[0.026532189526576124, 0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7],
  ...[1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615],
  ...[0.0007868691311456133, 1.8463183175100548e-5, 1.421511758316446e-7, 2.0442631033899397e-15],
)

/**
 * Replaces the probability in `io[at]` by its normal quantile; allocates nothing. The probability must lie above 0 and below 1.
 *
 * @see Wichura, Algorithm AS 241: the percentage points of the normal distribution (1988), PPND16
 */
export function normalQuantileInto(io: Float64Array, at: number): void {
  const p = io[at]!
  const q = p - 0.5
  if (Math.abs(q) <= 0.425) {
    io[at] = 0.180625 - q * q
    ratioInto(CENTRE_TOP, CENTRE_BOTTOM, io, at)
    io[at] = q * io[at]!
    return
  }
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p))
  io[at] = r <= 5 ? r - 1.6 : r - 5
  if (r <= 5) ratioInto(TAIL_TOP, TAIL_BOTTOM, io, at)
  else ratioInto(FAR_TOP, FAR_BOTTOM, io, at)
  if (q < 0) io[at] = -io[at]!
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

/** Replaces r in `io[at]` by the ratio of the two polynomials. */
function ratioInto(topAt: number, bottomAt: number, io: Float64Array, at: number): void {
  const r = io[at]!
  const c = COEFFICIENTS
  const top =
    ((((((c[topAt + 7]! * r + c[topAt + 6]!) * r + c[topAt + 5]!) * r + c[topAt + 4]!) * r + c[topAt + 3]!) * r + c[topAt + 2]!) * r +
      c[topAt + 1]!) *
      r +
    c[topAt]!
  const bottom =
    ((((((c[bottomAt + 7]! * r + c[bottomAt + 6]!) * r + c[bottomAt + 5]!) * r + c[bottomAt + 4]!) * r + c[bottomAt + 3]!) * r +
      c[bottomAt + 2]!) *
      r +
      c[bottomAt + 1]!) *
      r +
    c[bottomAt]!
  io[at] = top / bottom
}
