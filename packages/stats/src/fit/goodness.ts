import { type Curve, rulesOf } from './durationFit.ts'

/** Distance of a fitted curve from the data. */
export interface Goodness {
  /** largest difference between the two cdfs (Kolmogorov–Smirnov) */
  readonly largestDifference: number
  /** Anderson–Darling, which sees the tails; null where the curve gives no chance at all to a value */
  readonly andersonDarling: number | null
  /** row, from 1, of the value that the curve excludes; null: none */
  readonly excludedRow: number | null
}

/**
 * Distances of a fitted curve from the values it was fitted to.
 *
 * @see Anderson & Darling, A test of goodness of fit (1954)
 * @example goodness(times, fitDuration(times, 'lognormal')).largestDifference < 0.2 // => true
 */
export function goodness(values: readonly number[], fit: Curve): Goodness {
  const rules = rulesOf(fit.family)
  const n = values.length
  const order = Float64Array.from(values).sort()
  const [lowers, uppers] = [new Float64Array(n), new Float64Array(n)]
  for (let i = 0; i < n; i++) {
    const { lower, upper } = rules.lnTails(fit.parameters, order[i]! - fit.shift)
    lowers[i] = lower
    uppers[i] = upper
  }
  let largestDifference = 0
  let sum = 0
  for (let i = 0; i < n; i++) {
    const lower = Math.exp(lowers[i]!)
    largestDifference = Math.max(largestDifference, (i + 1) / n - lower, lower - i / n)
    sum += (2 * i + 1) * (lowers[i]! + uppers[n - 1 - i]!)
  }
  const excluded = lowers.findIndex((lower, i) => lower === -Infinity || uppers[i] === -Infinity)
  return excluded < 0
    ? { largestDifference, andersonDarling: -n - sum / n, excludedRow: null }
    : { largestDifference, andersonDarling: null, excludedRow: values.indexOf(order[excluded]!) + 1 }
}
