import { Tally } from '../accumulate/tally.ts'
import { needSample } from '../samples.ts'
import { normalCdf } from '../special/normal.ts'
import { StatisticsError } from '../statisticsError.ts'

/** Anderson–Darling test of lognormal shape, in closed form. */
export interface LognormalTest {
  /** with sd by n − 1 */
  readonly andersonDarling: number
  /** times 1 + 0.75/n + 2.25/n² */
  readonly modified: number
  readonly pValue: number
}

/**
 * A check beside the bootstrap: Anderson–Darling for normal logarithms with mean and sd estimated, by a fitted formula for p.
 *
 * @param values  eight or more, above 0, not all equal
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_FIT
 * @see D'Agostino & Stephens, Goodness-of-Fit Techniques (1986), from memory
 * @example lognormalTest(times).pValue > 0.05 // => true
 */
export function lognormalTest(values: readonly number[]): LognormalTest {
  needSample('a test of shape', values, 'value', 8)
  const row = values.findIndex((value) => !(value > 0))
  if (row >= 0) throw new StatisticsError('E_FIT', `Value ${values[row]} in row ${row + 1}: a task time must be greater than 0.`)
  const logs = values.map(Math.log).sort((a, b) => a - b)
  const { mean, sd } = Tally.of(logs)
  if (sd === 0) throw new StatisticsError('E_FIT', `All ${values.length} values are ${values[0]}: use a constant, there is nothing to fit.`)
  const n = logs.length
  let sum = 0
  for (let i = 0; i < n; i++) {
    const low = (logs[i]! - mean!) / sd!
    const high = (logs[n - 1 - i]! - mean!) / sd!
    sum += (2 * i + 1) * (Math.log(normalCdf(low)) + Math.log(normalCdf(-high)))
  }
  const andersonDarling = -n - sum / n
  if (!Number.isFinite(andersonDarling))
    throw new StatisticsError('E_FIT', 'A value lies so far out that the curve excludes it: look at the largest and smallest value.')
  const modified = andersonDarling * (1 + 0.75 / n + 2.25 / (n * n))
  return { andersonDarling, modified, pValue: pOf(modified) }
}

function pOf(a: number): number {
  if (a >= 0.6) return Math.exp(1.2937 - 5.709 * a + 0.0186 * Math.min(a, 10) ** 2)
  if (a >= 0.34) return Math.exp(0.9177 - 4.279 * a - 1.38 * a * a)
  if (a >= 0.2) return 1 - Math.exp(-8.318 + 42.796 * a - 59.938 * a * a)
  return 1 - Math.exp(-13.436 + 101.14 * a - 223.73 * a * a)
}
