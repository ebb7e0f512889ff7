import { stream } from '../random/stream.ts'
import { normalCdf } from '../special/normal.ts'
import type { Distribution } from './distribution.ts'
import { checkDistribution, inner } from './distributions.ts'
import { quantile, SamplerTable } from './samplerTable.ts'

export interface ContractOptions {
  /** the inverse has no jump and no kink: the quadrature of mean and variance is then exact to 1e-7, else to 1e-3 */
  readonly smooth: boolean
  /** what to look at in place of the table's own draws; to see the contract broken */
  readonly draw?: (u: number) => number
}

const MIDPOINTS = 20_000
const US = [2 ** -54, 1e-12, 1e-6, 0.001, 0.03, 0.2, 0.4999, 0.5, 0.61, 0.75, 0.9, 0.97, 0.999, 1 - 1e-6, 1 - 2 ** -53]

/**
 * What every distribution must do, whatever its kind: one suite for all of them, so that a new one gets its tests by one line.
 *
 * @returns the breaches, in words; empty: it keeps the contract
 */
export function distributionContract(d: Distribution, options: ContractOptions): string[] {
  const reasons = checkDistribution(d)
  if (reasons.length > 0) return reasons
  const { smooth, draw = drawOf(d) } = options
  const falls = neverFalls(draw, d.kind)
  if (falls.length > 0) return falls
  return [
    ...sameBits(d, draw),
    ...cdfAndInverse(d, draw),
    ...momentsByQuadrature(d, draw, smooth),
    ...parts(d, draw),
    ...manyDraws(d, draw),
  ]
}

function drawOf(d: Distribution): (u: number) => number {
  const table = new SamplerTable([d])
  return (u) => {
    table.draw(0, u, 0)
    return table.value[0]!
  }
}

/** the table and the function give the same bits */
function sameBits(d: Distribution, draw: (u: number) => number): string[] {
  return US.filter((u) => draw(u) !== quantile(d, u)).map((u) => `at ${u} the table gives ${draw(u)}, the function ${quantile(d, u)}`)
}

/** F(x−) ≤ u ≤ F(x) */
function cdfAndInverse(d: Distribution, draw: (u: number) => number): string[] {
  return US.flatMap((u) => {
    const x = draw(u)
    const slack = 1e-9 * Math.min(u, 1 - u) + 1e-15
    const upTo = inner.cdf(d, x + 1e-14 * x, true)
    const below = inner.cdf(d, x - 1e-14 * x, false)
    return below <= u + slack && upTo >= u - slack ? [] : [`the value at ${u} is ${x}, where the cdf is ${below} … ${upTo}`]
  })
}

function neverFalls(draw: (u: number) => number, name: string): string[] {
  const next = stream('contract', 0, name)
  const us = Float64Array.from({ length: 2000 }, next).sort()
  let last = 0
  for (const u of [2 ** -54, ...us, 1 - 2 ** -53]) {
    const x = draw(u)
    if (!(x >= last && x < Infinity)) return [`at ${u} the inverse is ${x}, after ${last}`]
    last = x
  }
  return []
}

function momentsByQuadrature(d: Distribution, draw: (u: number) => number, smooth: boolean): string[] {
  const integral = smooth ? trapezoid : midpoint
  const tolerance = smooth ? 1e-7 : 1e-3
  const mean = inner.mean(d)
  const variance = inner.variance(d)
  const found = integral(draw)
  const foundVariance = integral((u) => (draw(u) - mean) ** 2)
  return [
    ...(Math.abs(found - mean) <= tolerance * mean ? [] : [`the mean is ${found} by quadrature, ${mean} by formula`]),
    ...(Math.abs(foundVariance - variance) <= tolerance * Math.max(variance, 1e-9 * mean * mean)
      ? []
      : [`the variance is ${foundVariance} by quadrature, ${variance} by formula`]),
  ]
}

/** the part of a moment below x, and all of it */
function parts(d: Distribution, draw: (u: number) => number): string[] {
  const mean = inner.mean(d)
  const square = inner.variance(d) + mean * mean
  const x = draw(0.6)
  const values = Float64Array.from({ length: MIDPOINTS }, (_, i) => draw((i + 0.5) / MIDPOINTS))
  return ([1, 2] as const).flatMap((order) => {
    const whole = order === 1 ? mean : square
    const all = inner.momentBelow(d, order, Infinity, true)
    const below = inner.momentBelow(d, order, x, true)
    const found = values.reduce((sum, value) => sum + (value <= x ? value ** order : 0), 0) / values.length
    return [
      ...(Math.abs(all - whole) <= 1e-11 * whole ? [] : [`moment ${order} is ${all} as the part below infinity, ${whole} by formula`]),
      ...(Math.abs(found - below) <= 1e-3 * whole ? [] : [`moment ${order} below ${x} is ${found} by quadrature, ${below} by formula`]),
    ]
  })
}

/** Mean and share below the median of many draws, each within 4.892 standard errors: false alarms 1e-6 each. */
function manyDraws(d: Distribution, draw: (u: number) => number): string[] {
  const next = stream('contract', 1, d.kind)
  const n = d.kind === 'gamma' || d.kind === 'pert' ? 10_000 : 100_000
  const median = draw(0.5)
  const mean = inner.mean(d)
  const below = inner.cdf(d, median, true)
  let sum = 0
  let count = 0
  for (let k = 0; k < n; k++) {
    const x = draw(next())
    sum += x
    if (x <= median) count++
  }
  const se = Math.sqrt(inner.variance(d) / n)
  const seBelow = Math.sqrt((below * (1 - below)) / n)
  return [
    ...(Math.abs(sum / n - mean) <= 4.892 * se + 1e-12 * mean ? [] : [`the mean of ${n} draws is ${sum / n}, ${mean} by formula`]),
    ...(Math.abs(count / n - below) <= 4.892 * seBelow + 1 / n
      ? []
      : [`${count} of ${n} draws are not above the median, ${below} by the cdf`]),
  ]
}

/** ∫ f over 0 … 1 through u = Φ(z): the trapezoid rule, exact to many digits for smooth f */
function trapezoid(f: (u: number) => number): number {
  const step = 1 / 64
  let sum = 0
  for (let z = -8.2; z <= 8.2; z += step) sum += (f(normalCdf(z)) * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI)
  return sum * step
}

/** ∫ f over 0 … 1 by midpoints, for inverses with jumps */
function midpoint(f: (u: number) => number): number {
  let sum = 0
  for (let i = 0; i < MIDPOINTS; i++) sum += f((i + 0.5) / MIDPOINTS)
  return sum / MIDPOINTS
}
