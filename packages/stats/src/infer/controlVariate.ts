import { Tally } from '../accumulate/tally.ts'
import { notACount, unequalLength } from '../messages.ts'
import { needLevel, needSample } from '../samples.ts'
import { tQuantile } from '../special/tQuantile.ts'
import { StatisticsError } from '../statisticsError.ts'
import { type MeanInterval, meanInterval } from './meanInterval.ts'

/** A quantity whose mean is known exactly, observed in each replication. */
export interface Control {
  /** its name, for the sentences */
  readonly name: string
  /** one a replication */
  readonly values: readonly number[]
  readonly mean: number
}

/** A mean with the luck of the draws taken out. */
export interface ControlledMean {
  readonly n: number
  readonly estimate: number
  /** by control */
  readonly beta: readonly number[]
  /** divisor n − q − 1 */
  readonly residualVariance: number
  readonly standardError: number
  readonly level: number
  readonly halfWidth: number
  readonly low: number
  readonly high: number
  /** without controls */
  readonly plain: MeanInterval
  /** worth its loss of degrees of freedom: (1 − R²)(n − 2)/(n − q − 2) < 0.9 and n ≥ 10. Decide from a pilot, or keep the control for good */
  readonly pays: boolean
}

/**
 * Estimate of a mean with one or two control variates, by regression on their distance from the known means. It helps means, never quantiles or chances.
 *
 * @param values    one a replication
 * @param controls  one or two, chosen before the runs
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_UNEQUAL_LENGTH; E_NO_SPREAD where a control does not vary, or two of them move together
 * @see Lavenberg & Welch, A perspective on the use of control variables to increase the efficiency of Monte Carlo simulations (1981), from memory
 */
export function controlVariate(values: readonly number[], controls: readonly Control[], level: number = 0.95): ControlledMean {
  const q = controls.length
  if (q < 1 || q > 2) throw notACount('The number of controls', q, 1)
  needLevel(level)
  for (const control of controls) {
    if (control.values.length !== values.length)
      throw unequalLength('The output', values.length, `the control "${control.name}"`, control.values.length)
    needSample(`the control "${control.name}"`, control.values, 'replication', 2)
    if (Tally.of(control.values).variance === 0) {
      throw new StatisticsError(
        'E_NO_SPREAD',
        `The control "${control.name}" does not vary, its values are all ${control.values[0]}: leave it out.`,
      )
    }
  }
  needSample('a controlled mean', values, 'replication', q + 3)
  const n = values.length
  const plain = meanInterval(values, level)
  const y = values.map((value) => value - plain.mean)
  const columns = controls.map((control) => {
    const mean = Tally.of(control.values).mean!
    return { centred: control.values.map((value) => value - mean), off: mean - control.mean }
  })
  const inverse = inverseOf(columns.map((a) => columns.map((b) => dot(a.centred, b.centred))))
  const withY = columns.map((column) => dot(column.centred, y))
  const beta = inverse.map((row) => dot(row, withY))
  const off = columns.map((column) => column.off)
  const residuals = y.map(
    (value, j) =>
      value -
      dot(
        beta,
        columns.map((column) => column.centred[j]!),
      ),
  )
  const left = dot(residuals, residuals)
  const residualVariance = left / (n - q - 1)
  const standardError = Math.sqrt(
    residualVariance *
      (1 / n +
        dot(
          off,
          inverse.map((row) => dot(row, off)),
        )),
  )
  const estimate = plain.mean - dot(beta, off)
  const halfWidth = standardError === 0 ? 0 : tQuantile((1 + level) / 2, n - q - 1) * standardError
  const total = dot(y, y)
  const pays = n >= 10 && total > 0 && ((left / total) * (n - 2)) / (n - q - 2) < 0.9
  return {
    n,
    estimate,
    beta,
    residualVariance,
    standardError,
    level,
    halfWidth,
    low: estimate - halfWidth,
    high: estimate + halfWidth,
    plain,
    pays,
  }
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0)

/** of the sums of products of one or two centred columns */
function inverseOf(products: readonly (readonly number[])[]): number[][] {
  const a = products[0]![0]!
  if (products.length === 1) return [[1 / a]]
  const b = products[0]![1]!
  const d = products[1]![1]!
  const determinant = a * d - b * b
  if (determinant <= 1e-12 * a * d) {
    throw new StatisticsError('E_NO_SPREAD', 'The two controls move together: leave one of them out.')
  }
  return [
    [d / determinant, -b / determinant],
    [-b / determinant, a / determinant],
  ]
}
