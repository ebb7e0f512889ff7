import { describe, expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalCdf } from '../special/normal.ts'
import type { Distribution } from './distribution.ts'
import { checkDistribution, distributionCdf, distributionMean, distributionVariance, inner } from './distributions.ts'
import { quantile, SamplerTable } from './samplerTable.ts'

const T30 = [21.4, 19.8, 24.6, 20.3, 22.7, 18.9, 27.5, 20.9, 19.5, 23.1, 21.8, 25.9, 20.1, 18.6, 22.2]
const lognormal: Distribution = { kind: 'lognormal', mean: 20, cv: 0.3 }

distributionContract({ kind: 'constant', value: 4 }, { smooth: true })
distributionContract({ kind: 'uniform', min: 2, max: 5 }, { smooth: true })
distributionContract({ kind: 'triangular', min: 15, mode: 20, max: 37 }, { smooth: false })
distributionContract({ kind: 'triangular', min: 3, mode: 8, max: 8 }, { smooth: true })
distributionContract({ kind: 'triangular', min: 3, mode: 3, max: 8 }, { smooth: true })
distributionContract({ kind: 'exponential', mean: 3600 }, { smooth: true })
distributionContract({ kind: 'lognormal', mean: 20, cv: 0.15 }, { smooth: true })
distributionContract({ kind: 'gamma', mean: 20, cv: 0.2 }, { smooth: true })
distributionContract({ kind: 'weibull', shape: 2.1, scale: 81.9 }, { smooth: true })
distributionContract({ kind: 'pert', min: 15, mode: 20, max: 37 }, { smooth: true })
distributionContract({ kind: 'empirical', values: T30, interpolate: false }, { smooth: false })
distributionContract({ kind: 'empirical', values: T30, interpolate: true }, { smooth: false })
distributionContract({ kind: 'empirical', values: [7, 7, 9], interpolate: true }, { smooth: false })
distributionContract({ kind: 'empirical', values: [7], interpolate: true }, { smooth: true })
distributionContract({ kind: 'discrete', values: [2, 5, 9], weights: [5, 3, 2] }, { smooth: false })
distributionContract({ kind: 'occasional', base: 10, probability: 0.2, of: lognormal }, { smooth: false })
distributionContract({ kind: 'occasional', base: 10, probability: 0, of: lognormal }, { smooth: true })
distributionContract({ kind: 'occasional', base: 0, probability: 1, of: { kind: 'exponential', mean: 2 } }, { smooth: true })
distributionContract({ kind: 'limited', of: lognormal, shift: 4, min: null, max: null }, { smooth: true })
distributionContract({ kind: 'limited', of: lognormal, shift: 0, min: 12, max: 40 }, { smooth: true })
distributionContract({ kind: 'limited', of: lognormal, shift: 5, min: null, max: 22 }, { smooth: true })
distributionContract({ kind: 'limited', of: { kind: 'weibull', shape: 2, scale: 9 }, shift: 3, min: 7, max: null }, { smooth: true })
distributionContract(
  { kind: 'limited', of: { kind: 'discrete', values: [2, 4, 6], weights: [1, 1, 1] }, shift: 1, min: 5, max: 7 },
  { smooth: false },
)
distributionContract(
  { kind: 'limited', of: { kind: 'discrete', values: [9, 2, 5], weights: [2, 5, 3] }, shift: 1, min: 4, max: null },
  { smooth: false },
)
distributionContract(
  { kind: 'limited', of: { kind: 'occasional', base: 10, probability: 0.3, of: lognormal }, shift: 1, min: 11, max: 40 },
  { smooth: false },
)

/**
 * What every distribution must do, whatever its kind; a new one gets its tests by one line.
 *
 * @param smooth  the inverse has no jump and no kink: the quadrature of mean and variance is then exact to 1e-7, else to 1e-3
 */
function distributionContract(d: Distribution, { smooth }: { smooth: boolean }): void {
  describe(`${d.kind} ${JSON.stringify(d)}`, () => {
    const table = new SamplerTable([d])
    const draw = (u: number): number => {
      table.draw(0, u, 0)
      return table.value[0]!
    }
    const us = [2 ** -54, 1e-12, 1e-6, 0.001, 0.03, 0.2, 0.4999, 0.5, 0.61, 0.75, 0.9, 0.97, 0.999, 1 - 1e-6, 1 - 2 ** -53]

    test('its parameters are usable', () => expect(checkDistribution(d)).toEqual([]))

    test('the table and the function give the same bits', () => {
      for (const u of us) expect(draw(u)).toBe(quantile(d, u))
    })

    test('cdf and inverse belong together: F(x−) ≤ u ≤ F(x)', () => {
      for (const u of us) {
        const x = draw(u)
        const slack = 1e-9 * Math.min(u, 1 - u) + 1e-15
        expect(inner.cdf(d, x + 1e-14 * x, true)).toBeGreaterThanOrEqual(u - slack)
        expect(inner.cdf(d, x - 1e-14 * x, false)).toBeLessThanOrEqual(u + slack)
      }
    })

    test('the inverse never falls, and stays finite and not below zero', () => {
      const { next, values } = { next: stream('contract', 0, d.kind), values: new Float64Array(2000) }
      for (let i = 0; i < values.length; i++) values[i] = next()
      values.sort()
      let last = 0
      for (const u of [2 ** -54, ...values, 1 - 2 ** -53]) {
        const x = draw(u)
        expect(x).toBeGreaterThanOrEqual(last)
        expect(Number.isFinite(x)).toBe(true)
        last = x
      }
    })

    test('mean and variance agree with quadrature of the inverse', () => {
      const integral = smooth ? trapezoid : midpoint
      const tolerance = smooth ? 1e-7 : 1e-3
      const mean = distributionMean(d)
      const variance = distributionVariance(d)
      const got = integral(draw)
      expect(Math.abs(got - mean)).toBeLessThanOrEqual(tolerance * mean)
      expect(Math.abs(integral((u) => (draw(u) - mean) ** 2) - variance)).toBeLessThanOrEqual(
        tolerance * Math.max(variance, 1e-9 * mean * mean),
      )
    })

    test('the part of a moment below x agrees with quadrature, and all of it is mean and E x²', () => {
      const mean = distributionMean(d)
      expect(Math.abs(inner.momentBelow(d, 1, Infinity, true) - mean)).toBeLessThanOrEqual(1e-11 * mean)
      const square = distributionVariance(d) + mean * mean
      expect(Math.abs(inner.momentBelow(d, 2, Infinity, true) - square)).toBeLessThanOrEqual(1e-11 * square)
      const x = draw(0.6)
      for (const order of [1, 2] as const) {
        const got = midpoint((u) => (draw(u) <= x ? draw(u) ** order : 0))
        expect(Math.abs(got - inner.momentBelow(d, order, x, true))).toBeLessThanOrEqual(1e-3 * (order === 1 ? mean : square))
      }
    })

    test('100,000 draws have its mean and its share below the median', () => {
      // 4.892 standard errors: false alarms 1e-6 each
      const next = stream('contract', 1, d.kind)
      const median = draw(0.5)
      const below = distributionCdf(d, median)
      const n = table.uses(0) === 'uniform' && (d.kind === 'gamma' || d.kind === 'pert') ? 10_000 : 100_000
      let sum = 0
      let count = 0
      for (let k = 0; k < n; k++) {
        table.draw(0, next(), k)
        sum += table.value[0]!
        if (table.value[0]! <= median) count++
      }
      const se = Math.sqrt(distributionVariance(d) / n)
      expect(Math.abs(sum / n - distributionMean(d))).toBeLessThanOrEqual(4.892 * se + 1e-12 * distributionMean(d))
      if (below < 1) expect(Math.abs(count / n - below)).toBeLessThanOrEqual(4.892 * Math.sqrt((below * (1 - below)) / n) + 1 / n)
      // seen to fail: two hundredths of the mean off, where the spread lets so many draws see that
      if (se < (0.02 * distributionMean(d)) / 10) expect(Math.abs(sum / n - 1.02 * distributionMean(d))).toBeGreaterThan(4.892 * se)
    })
  })
}

/** ∫ f over 0 … 1 through u = Φ(z): the trapezoid rule, exact to many digits for smooth f */
function trapezoid(f: (u: number) => number): number {
  const step = 1 / 64
  let sum = 0
  for (let z = -8.2; z <= 8.2; z += step) sum += (f(normalCdf(z)) * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI)
  return sum * step
}

/** ∫ f over 0 … 1 by 20,000 midpoints, for inverses with jumps */
function midpoint(f: (u: number) => number): number {
  const n = 20_000
  let sum = 0
  for (let i = 0; i < n; i++) sum += f((i + 0.5) / n)
  return sum / n
}
