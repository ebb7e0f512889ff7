import { Tally } from '../accumulate/tally.ts'
import { notInRange, unequalLength } from '../messages.ts'
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
  /** (1 − R²)(n − 2)/(n − q − 2): variance expected of the estimate, as a share of that of the plain mean; infinite where n ≤ q + 2 or the output does not vary */
  readonly varianceShare: number
}

/** more would cost more than they bring, and their choice would bias */
export const CONTROLS_MAX = 3

/**
 * Estimate of a mean with one to three control variates, by regression on their distance from the known means. It helps means, never quantiles or chances.
 *
 * @param values    one a replication
 * @param controls  one to three, chosen before the runs
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_UNEQUAL_LENGTH; E_NO_SPREAD where a control does not vary, or some of them move together
 * @see Lavenberg & Welch, A perspective on the use of control variables to increase the efficiency of Monte Carlo simulations (1981), from memory
 * @example controlVariate([412, 418, 409, 415, 421, 407], [{ name: 'jams', values: [8, 11, 7, 10, 12, 6], mean: 10 }]).estimate // => 415.9166666666667
 */
export function controlVariate(values: readonly number[], controls: readonly Control[], level: number = 0.95): ControlledMean {
  const q = controls.length
  if (q < 1 || q > CONTROLS_MAX) throw notInRange('The number of controls', q, 1, CONTROLS_MAX)
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
  if (inverse === null) throw new StatisticsError('E_NO_SPREAD', 'The controls move together: leave one of them out.')
  const withY = columns.map((column) => dot(column.centred, y))
  const beta = inverse.map((row) => dot(row, withY))
  const off = columns.map((column) => column.off)
  const residuals = y.map((value, j) => columns.reduce((rest, column, i) => rest - beta[i]! * column.centred[j]!, value))
  const left = dot(residuals, residuals)
  const residualVariance = left / (n - q - 1)
  const farOff = dot(
    off,
    inverse.map((row) => dot(row, off)),
  )
  const standardError = Math.sqrt(residualVariance * (1 / n + farOff))
  const estimate = plain.mean - dot(beta, off)
  const halfWidth = standardError === 0 ? 0 : tQuantile((1 + level) / 2, n - q - 1) * standardError
  const total = dot(y, y)
  const varianceShare = total > 0 && n > q + 2 ? ((left / total) * (n - 2)) / (n - q - 2) : Number.POSITIVE_INFINITY
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
    varianceShare,
  }
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0)

/** Of the sums of products of centred columns, by elimination; null where one of them is all but made of those before it. */
function inverseOf(products: readonly (readonly number[])[]): number[][] | null {
  const q = products.length
  const rows = products.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))])
  for (let i = 0; i < q; i++) {
    const pivot = rows[i]![i]!
    if (!(pivot > 1e-12 * products[i]![i]!)) return null
    rows[i] = rows[i]!.map((value) => value / pivot)
    for (let k = 0; k < q; k++) {
      const factor = rows[k]![i]!
      if (k !== i) rows[k] = rows[k]!.map((value, j) => value - factor * rows[i]![j]!)
    }
  }
  return rows.map((row) => row.slice(q))
}
