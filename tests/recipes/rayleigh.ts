/** A kind of distribution that there is for its recipe alone. */
import type { Kind } from '../../packages/stats/src/distributions/kind.ts'
import { normalCdf } from '../../packages/stats/src/special/normal.ts'

// Rayleigh by its mode: F(x) = 1 − exp(−x²/2m²), mean m·√(π/2), variance (4 − π)/2·m²
// (Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions 1, 1994, ch. 18; from memory)
interface Rayleigh {
  readonly kind: 'rayleigh'
  readonly mode: number
}
const tail = (d: Rayleigh, x: number): number => Math.exp(-(x * x) / (2 * d.mode * d.mode))
export const rayleigh = {
  fields: { mode: ['positive', 'most frequent time'] },
  says: 'a kind that there is for this test alone',
  inverse: () => (p: Float64Array, o: number, io: Float64Array) => {
    io[0] = p[o]! * Math.sqrt(-2 * Math.log1p(-io[0]!))
  },
  reasons: (d: Rayleigh) => (d.mode > 0 ? [] : [`mode is ${d.mode}; it must be above 0`]),
  parameters: (d: Rayleigh) => [d.mode],
  mean: (d: Rayleigh) => d.mode * Math.sqrt(Math.PI / 2),
  variance: (d: Rayleigh) => ((4 - Math.PI) / 2) * d.mode ** 2,
  cdf: (d: Rayleigh, x: number) => (x <= 0 ? 0 : -Math.expm1(-(x * x) / (2 * d.mode * d.mode))),
  momentBelow(d: Rayleigh, order: 1 | 2, x: number) {
    if (x <= 0) return 0
    const rest = x === Infinity ? 0 : tail(d, x)
    if (order === 2) return 2 * d.mode ** 2 * (1 - rest) - (x === Infinity ? 0 : x * x * rest)
    return d.mode * Math.sqrt(Math.PI / 2) * (2 * normalCdf(x / d.mode) - 1) - (x === Infinity ? 0 : x * rest)
  },
  words: (d: Rayleigh, to: { value(x: number): string }) => `most often ${to.value(d.mode)}, Rayleigh`,
} as unknown as Kind<'weibull'>
