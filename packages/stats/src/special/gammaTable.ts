import { needPositive } from './domain.ts'
import { gammaQuantile } from './gammaQuantile.ts'
import { lnGamma } from './lnGamma.ts'
import { normalCdf } from './normal.ts'
import { normalQuantile } from './normalQuantile.ts'

/** normal quantiles between which the table lies: beyond them probabilities are rare, and near 1 doubles too coarse; they are solved for */
const [FROM, TO] = [-8.3, 4]
const STEPS = 1024

/**
 * Quantiles of the gamma distribution with scale 1 for very many probabilities of one shape: ln x between 1025 solved points, by a cubic with their slopes.
 *
 * @param shape  above 0
 * @returns      by probability, above 0 and below 1; relative error at most 1e-9 for a shape from 0.5 to 10,000, and that of `gammaQuantile` elsewhere
 * @throws StatisticsError E_DOMAIN
 * @see Hermite's cubic: any text on interpolation
 * @example Math.abs(gammaTable(1)(0.5) / Math.LN2 - 1) < 1e-9 // => true
 */
export function gammaTable(shape: number): (p: number) => number {
  needPositive('gammaTable', 'the shape', shape)
  if (shape < 0.5 || shape > 1e4) return (p) => gammaQuantile(p, shape)
  const step = (TO - FROM) / STEPS
  const [logs, slopes] = [new Float64Array(STEPS + 1), new Float64Array(STEPS + 1)]
  const lnGammaShape = lnGamma(shape)
  for (let at = 0; at <= STEPS; at++) {
    const z = FROM + at * step
    const log = Math.log(gammaQuantile(normalCdf(z), shape))
    logs[at] = log
    // d ln x/dz = φ(z)/(x·f(x))
    slopes[at] = step * Math.exp(-(z * z) / 2 - 0.5 * Math.log(2 * Math.PI) - shape * log + Math.exp(log) + lnGammaShape)
  }
  return (p) => {
    const place = (normalQuantile(p) - FROM) / step
    const at = Math.floor(place)
    if (!(at >= 0 && at < STEPS)) return gammaQuantile(p, shape)
    const t = place - at
    const rise = logs[at + 1]! - logs[at]!
    const [from, to] = [slopes[at]!, slopes[at + 1]!]
    return Math.exp(logs[at]! + t * (from + t * (3 * rise - 2 * from - to + t * (from + to - 2 * rise))))
  }
}
