import { StatisticsError } from '../statisticsError.ts'
import { type FamilyRules, weightedMean } from './family.ts'

/** Weibull by shape and scale; the shape solves one equation with a rising left side, on values scaled by their largest. */
export const weibullFit: FamilyRules = {
  fit(values, weights) {
    const most = values.reduce((largest, x) => Math.max(largest, x), 0)
    const logs = values.map((x) => Math.log(x / most))
    const meanLog = weightedMean(logs, weights, (l) => l)
    const sdLog = Math.sqrt(weightedMean(logs, weights, (l) => (l - meanLog) ** 2))
    const shape = shapeFor(logs, weights, meanLog, 1.28255 / sdLog)
    return [shape, most * weightedMean(logs, weights, (l) => Math.exp(shape * l)) ** (1 / shape)]
  },
  lnDensity: ([shape, scale], x) => Math.log(shape / scale) + (shape - 1) * Math.log(x / scale) - (x / scale) ** shape,
  lnTails([shape, scale], x) {
    const hazard = (x / scale) ** shape
    return { lower: Math.log(-Math.expm1(-hazard)), upper: -hazard }
  },
  quantile: ([shape, scale], u) => scale * (-Math.log1p(-u)) ** (1 / shape),
  quantiles: (parameters) => (u) => weibullFit.quantile(parameters, u),
  distribution: ([shape, scale]) => ({ kind: 'weibull', shape, scale }),
}

/** g(k) = Σzᵏ ln z/Σzᵏ − 1/k − mean ln z = 0, by Newton's method kept in a bracket */
function shapeFor(logs: readonly number[], weights: readonly number[] | null, meanLog: number, start: number): number {
  let low = 0
  let high = Infinity
  let k = start
  for (let n = 0; n < 200; n++) {
    // sums of zᵏ, zᵏ ln z and zᵏ ln² z; of equal weights the number of values falls out of the ratios
    let [zero, first, second] = [0, 0, 0]
    for (let i = 0; i < logs.length; i++) {
      const l = logs[i]!
      const power = (weights === null ? 1 : weights[i]!) * Math.exp(k * l)
      zero += power
      first += power * l
      second += power * l * l
    }
    first /= zero
    second /= zero
    const value = first - 1 / k - meanLog
    if (value < 0) low = k
    else high = k
    const step = value / (second - first * first + 1 / (k * k))
    if (Math.abs(step) <= 1e-12 * k) return k - step
    const next = k - step
    k = next > low && next < high ? next : high < Infinity ? (low + high) / 2 : 2 * k
  }
  throw new StatisticsError('E_NOT_SETTLED', 'The Weibull fit does not settle: the values are too nearly equal; use a constant.')
}
